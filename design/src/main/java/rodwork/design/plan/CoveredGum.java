package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.Arch;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** What of the gum a curve goes round. */
public final class CoveredGum {
  /** The roof of a mouth is not deeper below a curve on it than this [mm]. */
  private static final double BELOW_MM = 10;

  private CoveredGum() {}

  /**
   * Triangles of gum that face the occlusal side and lie, seen from above, within a closed curve.
   *
   * @param loop on the cast
   * @return in rising order
   */
  public static List<Integer> within(Arch arch, ToothLabels labels, Line loop) {
    Vec3 up = arch.frame().z();
    List<double[]> polygon = loop.points().stream().map(p -> seen(arch, p)).toList();
    double low = loop.points().stream().mapToDouble(p -> p.dot(up)).min().orElse(0) - BELOW_MM;
    List<Integer> inside = new ArrayList<>();
    TriangleMesh mesh = arch.mesh();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (labels.of(t) == ToothLabels.GUM && !arch.surface().isBase(t)) {
        Vec3 middle = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
        if (middle.dot(up) > low
            && mesh.doubleAreaNormal(t).dot(up) > 0
            && Ground.contains(polygon, seen(arch, middle))) {
          inside.add(t);
        }
      }
    }
    return inside;
  }

  private static double[] seen(Arch arch, Vec3 point) {
    Vec3 d = point.minus(arch.frame().origin());
    return new double[] {d.dot(arch.frame().x()), d.dot(arch.frame().y())};
  }
}
