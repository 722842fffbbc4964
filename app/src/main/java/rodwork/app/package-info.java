/** Command line, HTTP server and launcher; nothing is measured here. */
@NullMarked
package rodwork.app;

import org.jspecify.annotations.NullMarked;
