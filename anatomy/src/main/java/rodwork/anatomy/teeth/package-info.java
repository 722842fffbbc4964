/**
 * Which triangle of a cast belongs to which tooth.
 *
 * <p>What a person knows goes in as {@link rodwork.anatomy.teeth.ToothHints}: nothing, the missing
 * teeth, a point a tooth, places fixed. {@link rodwork.anatomy.teeth.ToothFinder} looks along the
 * arch for inward folds and for ridges between crowns, lays the row of usual teeth on what it sees,
 * and spreads each tooth over the surface by a random walk that shuns concave edges. The answer is
 * a {@link rodwork.anatomy.teeth.ToothFinding}, with how sure it is and points to correct it from.
 */
@NullMarked
package rodwork.anatomy.teeth;

import org.jspecify.annotations.NullMarked;
