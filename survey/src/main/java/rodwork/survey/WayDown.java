package rodwork.survey;

import java.util.function.IntPredicate;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.overhang.Overhang;

/**
 * The way from a place down the surface, in its own section, to where a part of the surface ends:
 * from a crown to its gingival margin.
 *
 * @param end where the part ends [mm, scan frame]
 * @param lengthMm along the surface
 * @param dropMm along the path
 */
public record WayDown(Vec3 end, double lengthMm, double dropMm) {
  /** Longer ways are not followed [mm]. */
  private static final double MOST_WAY_MM = 15;

  /** NaN lengths where the surface lies level or ends first. */
  static WayDown of(
      Surveyor surveyor, Overhang overhang, Vec3 point, int triangle, IntPredicate part) {
    MeshTopology topology = surveyor.topology();
    Vec3 axis = overhang.axis();
    Vec3 out = Seat.outward(surveyor, overhang, point, triangle);
    if (out.length() < 1e-9) {
      return new WayDown(point, Double.NaN, Double.NaN);
    }
    double[] length = {Double.NaN};
    Vec3[] end = {point};
    new SectionWalk(topology, point, axis.cross(out).unit())
        .walk(
            triangle,
            axis.times(-1),
            (q, a, b, s, t, walked) -> {
              int next = across(topology, t, a, b);
              if (next >= 0 && part.test(next)) {
                return walked < MOST_WAY_MM;
              }
              if (next >= 0) {
                length[0] = walked;
                end[0] = q;
              }
              return false;
            });
    return new WayDown(end[0], length[0], point.minus(end[0]).dot(axis))
        .known(Double.isFinite(length[0]));
  }

  private WayDown known(boolean known) {
    return known ? this : new WayDown(end, Double.NaN, Double.NaN);
  }

  /** The triangle beyond the edge from a to b; −1 where the surface ends. */
  private static int across(MeshTopology topology, int t, int a, int b) {
    for (int k = 0; k < 3; k++) {
      int p = topology.mesh().corner(t, k);
      int q = topology.mesh().corner(t, (k + 1) % 3);
      if ((p == a && q == b) || (p == b && q == a)) {
        return topology.neighbour(t, k);
      }
    }
    return -1;
  }
}
