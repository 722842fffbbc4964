/** What is known of the arch before any path is chosen: its frame, its anatomic surface. */
@NullMarked
package rodwork.anatomy;

import org.jspecify.annotations.NullMarked;
