/**
 * Files for other programs and printers: the cast at its path, with what was surveyed on it.
 *
 * <p>Path frame: +Z along the withdrawal axis, +Y to the front, X = Y × Z, millimetres, the origin
 * where the arch frame has it. {@link rodwork.casework.export.PathFrame} carries points between it
 * and the scan; docs/handover.md tells each file.
 */
@NullMarked
package rodwork.casework.export;

import org.jspecify.annotations.NullMarked;
