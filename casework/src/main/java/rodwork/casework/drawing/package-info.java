/** The plan on paper: drawn to scale from the curves of the plan on the outline of the scan. */
@NullMarked
package rodwork.casework.drawing;

import org.jspecify.annotations.NullMarked;
