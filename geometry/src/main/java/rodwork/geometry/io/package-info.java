/**
 * Files to meshes and back. A format is told by its content, a count in a header is never trusted,
 * memory stays bounded.
 */
@NullMarked
package rodwork.geometry.io;

import org.jspecify.annotations.NullMarked;
