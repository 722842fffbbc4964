/**
 * How far a point lies under the overhang of the surface seen from above: the distance to the
 * nearest vertical line that comes down free to its level.
 */
@NullMarked
package rodwork.geometry.overhang;

import org.jspecify.annotations.NullMarked;
