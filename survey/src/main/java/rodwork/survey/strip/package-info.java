/**
 * The parallel strip: every surface that a surveyor looks at first, each with the rod against it.
 */
@NullMarked
package rodwork.survey.strip;

import org.jspecify.annotations.NullMarked;
