/**
 * What is known of the arch before any path is chosen: its frame, its anatomic surface.
 *
 * <p>The chain is {@code MeshTopology → AnatomicSurface → ArchFrame → Arch}. The plaster base is
 * found first, because without it even a closed cast is an open shell that faces the occlusal side;
 * the frame then rests on the cusps and follows the curve of the crowns. Whatever a person knows
 * better goes in as a correction of the surface or as a hint of a direction.
 */
@NullMarked
package rodwork.anatomy;

import org.jspecify.annotations.NullMarked;
