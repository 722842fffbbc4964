/**
 * How the teeth lie against the occlusal plane and against the other jaw: the plane that rests on
 * cusp tips and edges, and the room to the opposing teeth.
 */
@NullMarked
package rodwork.anatomy.occlusion;

import org.jspecify.annotations.NullMarked;
