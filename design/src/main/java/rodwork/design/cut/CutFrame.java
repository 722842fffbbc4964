package rodwork.design.cut;

import rodwork.geometry.Vec3;

/**
 * The directions in which a side of a tooth is cut.
 *
 * @param origin scan frame [mm]
 * @param out away from the tooth, perpendicular to the path, unit vector
 * @param axis path of placement, unit vector
 */
public record CutFrame(Vec3 origin, Vec3 out, Vec3 axis) {
  public static CutFrame of(Vec3 origin, Vec3 outward, Vec3 axis) {
    Vec3 p = axis.unit();
    return new CutFrame(origin, outward.across(p).unit(), p);
  }

  public Vec3 across() {
    return axis.cross(out);
  }

  /** A point as across, outward and along the path from the origin [mm]. */
  public Vec3 local(Vec3 point) {
    Vec3 way = point.minus(origin);
    return new Vec3(way.dot(across()), way.dot(out), way.dot(axis));
  }

  /** The way back. */
  public Vec3 scan(double across, double outward, double height) {
    return origin.plus(across().times(across)).plus(out.times(outward)).plus(axis.times(height));
  }
}
