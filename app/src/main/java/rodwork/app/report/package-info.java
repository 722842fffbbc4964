/**
 * How results are said: as JSON, whose shape docs/schema fixes, and as the short table of the
 * command line. Nothing is measured here.
 */
@NullMarked
package rodwork.app.report;

import org.jspecify.annotations.NullMarked;
