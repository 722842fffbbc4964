/**
 * Solids as implicit surfaces: a {@link rodwork.geometry.solid.Field} is negative inside a body and
 * grows outwards about as fast as the distance; bodies are joined by {@link
 * rodwork.geometry.solid.Blend} and become closed meshes by {@link
 * rodwork.geometry.solid.IsoSurface}.
 */
@NullMarked
package rodwork.geometry.solid;

import org.jspecify.annotations.NullMarked;
