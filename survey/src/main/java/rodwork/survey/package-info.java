/** One cast at one path: undercut field, survey lines, gauge marks. */
@NullMarked
package rodwork.survey;

import org.jspecify.annotations.NullMarked;
