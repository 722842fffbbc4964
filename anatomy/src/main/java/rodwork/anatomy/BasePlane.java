package rodwork.anatomy;

import rodwork.geometry.Vec3;

/**
 * A large planar face of a cast's plaster base.
 *
 * @param point a point on the plane, in the scan frame [mm]
 * @param outward unit normal away from the cast
 * @param areaMm2 area of the triangles found on it [mm²]
 * @param rmsMm how far those triangles lie from it, root mean square [mm]
 */
public record BasePlane(Vec3 point, Vec3 outward, double areaMm2, double rmsMm) {

  /** Signed distance of a point from the plane [mm]; positive outside the cast. */
  public double distance(Vec3 x) {
    return x.minus(point).dot(outward);
  }
}
