/**
 * A picture of a surveyed cast, drawn without a screen. Undercut cannot be seen along the
 * withdrawal axis, for that is what undercut is; so the plan shows it through what lies above, and
 * four views from the sides show it as the eye would.
 */
@NullMarked
package rodwork.app.picture;

import org.jspecify.annotations.NullMarked;
