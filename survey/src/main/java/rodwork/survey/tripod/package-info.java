/**
 * Keeping a path and finding it again: tripod marks, their way back on another scan of the same
 * cast, and a whole rescan laid on the first.
 */
@NullMarked
package rodwork.survey.tripod;

import org.jspecify.annotations.NullMarked;
