/**
 * Which triangle of a cast belongs to which tooth.
 *
 * <p>What a person knows goes in as {@link rodwork.anatomy.teeth.ToothHints}; {@link
 * rodwork.anatomy.teeth.ToothFinder} spreads it over the surface; the answer is a {@link
 * rodwork.anatomy.teeth.ToothFinding}. Teeth are found from one point a tooth; without points the
 * finder refuses and says how to go on.
 */
@NullMarked
package rodwork.anatomy.teeth;

import org.jspecify.annotations.NullMarked;
