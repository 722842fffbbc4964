/**
 * Bringing one shape onto another: rigid motions, the closed fit of matched points, and iterative
 * closest points for two scans of the same thing.
 */
@NullMarked
package rodwork.geometry.registration;

import org.jspecify.annotations.NullMarked;
