/**
 * The class of a partly toothless arch after Kennedy, with Applegate's rules.
 *
 * <p>An {@link rodwork.anatomy.kennedy.ArchState} says of each of the sixteen places whether a
 * tooth stands there and whether it counts; {@link rodwork.anatomy.kennedy.Kennedy} classifies it
 * and tells which rules decided. What is not known is assumed, and asked where the answer would
 * change the class.
 */
@NullMarked
package rodwork.anatomy.kennedy;

import org.jspecify.annotations.NullMarked;
