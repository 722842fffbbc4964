/**
 * One tooth on the scan: its crown, gingival margin, axes, sizes, thirds and neighbours.
 *
 * <p>{@link rodwork.anatomy.tooth.Teeth} measures them all from the arch and the {@link
 * rodwork.anatomy.teeth.ToothLabels}; a {@link rodwork.anatomy.tooth.Tooth} answers for one. All
 * positions are in the scan frame [mm].
 */
@NullMarked
package rodwork.anatomy.tooth;

import org.jspecify.annotations.NullMarked;
