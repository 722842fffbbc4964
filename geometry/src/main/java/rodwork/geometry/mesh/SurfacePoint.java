package rodwork.geometry.mesh;

import rodwork.geometry.Vec3;

/**
 * A point of a mesh that a query found.
 *
 * @param triangle the triangle it lies on
 * @param point where it lies [mm]
 * @param distance how far it is from where the query began [mm], for rays in lengths of the given
 *     direction
 */
public record SurfacePoint(int triangle, Vec3 point, double distance) {}
