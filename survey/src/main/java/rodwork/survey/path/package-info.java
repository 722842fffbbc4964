/**
 * The search for the path: what every tilt offers, weighed as the trade weighs it, and compared.
 *
 * <p>{@code PathSites} say where to look; {@code PathFactors} are what one tilt offers there;
 * {@code PathSearch} tries every tilt of a cone.
 */
@NullMarked
package rodwork.survey.path;

import org.jspecify.annotations.NullMarked;
