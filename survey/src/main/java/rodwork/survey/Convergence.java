package rodwork.survey;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;

/** The angle of gingival convergence: between the surface at a place and the path, over a chord. */
final class Convergence {
  private Convergence() {}

  /**
   * The angle between the chord from {@code reach} above to {@code reach} below along the section,
   * and the axis [degrees]; positive where the surface falls back going down, NaN where less than
   * half of the chord lies on the surface.
   *
   * @param out horizontal unit vector away from the tooth
   * @param reach length of surface each way [mm]
   */
  static double angleDeg(
      MeshTopology topology, Vec3 axis, Vec3 point, int triangle, Vec3 out, double reach) {
    SectionWalk walk = new SectionWalk(topology, point, axis.cross(out).unit());
    End above = end(walk, point, triangle, axis, reach);
    End below = end(walk, point, triangle, axis.times(-1), reach);
    if (above.length + below.length < reach) {
      return Double.NaN;
    }
    Vec3 chord = above.point.minus(below.point);
    return Math.toDegrees(Math.atan2(chord.dot(out), chord.dot(axis)));
  }

  private record End(Vec3 point, double length) {}

  private static End end(SectionWalk walk, Vec3 from, int triangle, Vec3 towards, double reach) {
    End[] end = {new End(from, 0)};
    walk.walk(
        triangle,
        towards,
        (q, a, b, s, t, length) -> {
          End last = end[0];
          if (length >= reach) {
            double share = (reach - last.length) / (length - last.length);
            end[0] = new End(last.point.plus(q.minus(last.point).times(share)), reach);
            return false;
          }
          end[0] = new End(q, length);
          return true;
        });
    return end[0];
  }
}
