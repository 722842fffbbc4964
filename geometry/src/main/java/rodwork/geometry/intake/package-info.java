/**
 * From the raw mesh of a file to a cast that can be surveyed: defects are mended and told, the unit
 * of length is found, and what cannot be mended is refused.
 *
 * <p>The central idea: one working draft in the file's own numbering goes through a few steps, each
 * of which mends one kind of defect and leaves a remark; a file without defects comes out with its
 * own vertices and triangles in its own order.
 */
@NullMarked
package rodwork.geometry.intake;

import org.jspecify.annotations.NullMarked;
