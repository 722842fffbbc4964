package rodwork.geometry.registration;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Points spread evenly over a surface, the same ones for the same mesh.
 *
 * <p>Systematic sampling by area: one point every {@code area / count} along the triangles in their
 * order, at a place in its triangle that a low-discrepancy sequence chooses (Roberts' R2, the
 * plastic number in two dimensions), so that nothing is drawn at random.
 */
public final class SurfaceSample {
  private static final double PLASTIC = 1.324717957244746;

  private SurfaceSample() {}

  /**
   * Samples.
   *
   * @param counted the triangles that count
   * @param count how many points about
   * @return points on the surface [mm]; none where nothing counts
   */
  public static List<Vec3> of(TriangleMesh mesh, IntPredicate counted, int count) {
    double total = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (counted.test(t)) {
        total += mesh.doubleAreaNormal(t).length();
      }
    }
    List<Vec3> points = new ArrayList<>(count);
    double step = total / count;
    double gone = step / 2;
    for (int t = 0; t < mesh.triangleCount() && step > 0; t++) {
      if (!counted.test(t)) {
        continue;
      }
      gone -= mesh.doubleAreaNormal(t).length();
      while (gone < 0 && points.size() < count) {
        gone += step;
        double u = (0.5 + points.size() / PLASTIC) % 1;
        double v = (0.5 + points.size() / (PLASTIC * PLASTIC)) % 1;
        if (u + v > 1) {
          u = 1 - u;
          v = 1 - v;
        }
        Vec3 a = mesh.vertex(mesh.corner(t, 0));
        Vec3 b = mesh.vertex(mesh.corner(t, 1)).minus(a);
        Vec3 c = mesh.vertex(mesh.corner(t, 2)).minus(a);
        points.add(a.plus(b.times(u)).plus(c.times(v)));
      }
    }
    return points;
  }
}
