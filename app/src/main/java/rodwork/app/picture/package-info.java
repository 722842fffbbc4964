/** A picture of a surveyed cast, seen along the withdrawal axis, drawn without a screen. */
@NullMarked
package rodwork.app.picture;

import org.jspecify.annotations.NullMarked;
