/**
 * Shapes of cuts in crowns and what they take, measured on the triangles of the scan.
 *
 * <p>The ledger asks what a preparation would take, the list of preparations makes it: both lay the
 * same cut, so that they cannot disagree.
 */
@NullMarked
package rodwork.design.cut;

import org.jspecify.annotations.NullMarked;
