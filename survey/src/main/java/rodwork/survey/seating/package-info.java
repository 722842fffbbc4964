/**
 * Solids that set a plaster cast on a surveyor's table as it was: a key between cast and spindle, a
 * wedge under the base.
 */
@NullMarked
package rodwork.survey.seating;

import org.jspecify.annotations.NullMarked;
