/** Teeth of closed form that the tests of the survey and of later modules share. */
@NullMarked
package rodwork.survey.testing;

import org.jspecify.annotations.NullMarked;
