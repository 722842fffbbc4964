/**
 * Triangle meshes as immutable values in flat arrays, and what is derived from them alone:
 * neighbours, boundaries, normals, trees, sections.
 */
@NullMarked
package rodwork.geometry.mesh;

import org.jspecify.annotations.NullMarked;
