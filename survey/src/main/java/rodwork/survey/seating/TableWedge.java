package rodwork.survey.seating;

import java.util.Comparator;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.BasePlane;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A wedge that lies between the level table of a surveyor and the flat base of a cast, so that the
 * path stands upright.
 *
 * @param mesh the wedge, closed, in the scan frame [mm]: its upper face lies on the base
 * @param angleDeg angle between its two faces [degrees]
 * @param thinnestMm its thickness at the thin edge [mm]
 * @param thickestMm its thickness at the thick edge [mm]
 */
public record TableWedge(TriangleMesh mesh, double angleDeg, double thinnestMm, double thickestMm) {
  private static final double THINNEST_MM = 3;

  /** A base farther from level than this is a side of the cast, not what it stands on [degrees]. */
  private static final double MOST_DEG = 35;

  /** The wedge reaches beyond the base by this much [mm]. */
  private static final double BEYOND_MM = 2;

  /**
   * Makes a wedge.
   *
   * @param axis the path, from tissue to the occlusal side
   * @throws rodwork.geometry.Refusal where the cast has no flat base to stand on
   */
  public static TableWedge of(TriangleMesh cast, AnatomicSurface surface, Vec3 axis) {
    Vec3 p = axis.unit();
    BasePlane base =
        surface.planes().stream()
            .filter(plane -> plane.outward().angleDegTo(p.times(-1)) < MOST_DEG)
            .max(Comparator.comparingDouble(BasePlane::areaMm2))
            .orElseThrow(() -> SeatingProblem.NO_BASE.with(surface.planes().size(), MOST_DEG));
    Vec3 n = base.outward();
    Vec3 e1 = n.anyPerpendicular();
    Vec3 e2 = n.cross(e1);
    double[] low = {1e300, 1e300};
    double[] high = {-1e300, -1e300};
    for (int t = 0; t < cast.triangleCount(); t++) {
      for (int k = 0; k < 3 && surface.isBase(t); k++) {
        Vec3 q = cast.vertex(cast.corner(t, k)).minus(base.point());
        if (Math.abs(q.dot(n)) < 0.5) {
          low[0] = Math.min(low[0], q.dot(e1));
          high[0] = Math.max(high[0], q.dot(e1));
          low[1] = Math.min(low[1], q.dot(e2));
          high[1] = Math.max(high[1], q.dot(e2));
        }
      }
    }
    Vec3[] upper = new Vec3[4];
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < 4; i++) {
      double u = i == 0 || i == 3 ? low[0] - BEYOND_MM : high[0] + BEYOND_MM;
      double v = i < 2 ? low[1] - BEYOND_MM : high[1] + BEYOND_MM;
      upper[i] = base.point().plus(e1.times(u)).plus(e2.times(v));
      lowest = Math.min(lowest, upper[i].dot(p));
      highest = Math.max(highest, upper[i].dot(p));
    }
    double table = lowest - THINNEST_MM;
    double[] xyz = new double[24];
    for (int i = 0; i < 4; i++) {
      put(xyz, i, upper[i]);
      put(xyz, i + 4, upper[i].minus(p.times(upper[i].dot(p) - table)));
    }
    // The upper face looks against the base's outward normal; seen from there 0-1-2-3 runs back.
    int[] corners = {
      0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3,
      0, 4, 3, 4, 7
    };
    return new TableWedge(
        TriangleMesh.of(xyz, corners), n.times(-1).angleDegTo(p), THINNEST_MM, highest - table);
  }

  private static void put(double[] xyz, int i, Vec3 q) {
    xyz[3 * i] = q.x();
    xyz[3 * i + 1] = q.y();
    xyz[3 * i + 2] = q.z();
  }
}
