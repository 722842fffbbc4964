/** Guiding planes: what a tooth offers at a path, and what it would cost to make one. */
@NullMarked
package rodwork.survey.plane;

import org.jspecify.annotations.NullMarked;
