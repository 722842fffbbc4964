package rodwork.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;

/**
 * What a survey sums up, over the anatomic surface alone.
 *
 * @param areaMm2 area with an undercut deeper than the shallow limit [mm²], depth linear over
 *     triangles
 * @param volumeMm3 space outside the cast with anatomic cast above it, down to the border of that
 *     region [mm³]
 * @param deepest the deepest places, deepest first, apart from each other, none of them flagged
 */
public record SurveyFigures(double areaMm2, double volumeMm3, List<Deep> deepest) {
  /** A deep place, scan frame. */
  public record Deep(Vec3 point, int vertex, double depthMm) {}

  /** Deep places are told apart when this far from each other [mm]. */
  private static final double APART_MM = 3;

  private static final int MOST_PLACES = 8;

  static SurveyFigures of(Surveyor surveyor, Overhang overhang, Watch watch) {
    TriangleMesh mesh = surveyor.topology().mesh();
    double shallow = surveyor.rules().shallow().value();
    double area = 0;
    boolean[] anatomic = new boolean[mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!surveyor.surface().isBase(t)) {
        area += mesh.area(t) * shareDeeper(mesh, overhang, t, shallow);
        for (int k = 0; k < 3; k++) {
          anatomic[mesh.corner(t, k)] = true;
        }
      }
    }
    double volume = overhang.overhungVolumeMm3(t -> !surveyor.surface().isBase(t), watch);
    return new SurveyFigures(area, volume, deepest(mesh, overhang, anatomic, shallow));
  }

  /** Share of a triangle on which a quantity linear over it exceeds a limit [0 to 1]. */
  private static double shareDeeper(TriangleMesh mesh, Overhang overhang, int t, double limit) {
    double[] d = new double[3];
    for (int k = 0; k < 3; k++) {
      d[k] = overhang.depth(mesh.corner(t, k)) - limit;
    }
    java.util.Arrays.sort(d);
    if (d[0] > 0) {
      return 1;
    }
    if (d[2] <= 0) {
      return 0;
    }
    return d[1] <= 0
        ? d[2] / (d[2] - d[0]) * d[2] / (d[2] - d[1])
        : 1 - d[0] / (d[0] - d[1]) * d[0] / (d[0] - d[2]);
  }

  private static List<Deep> deepest(
      TriangleMesh mesh, Overhang overhang, boolean[] anatomic, double shallow) {
    double cap = overhang.limits().capMm();
    List<Integer> order =
        IntStream.range(0, mesh.vertexCount())
            .filter(v -> anatomic[v] && overhang.depth(v) > shallow && overhang.depth(v) < cap)
            .boxed()
            .sorted(
                Comparator.comparingDouble((Integer v) -> -overhang.depth(v))
                    .thenComparing(Comparator.naturalOrder()))
            .toList();
    List<Deep> found = new ArrayList<>();
    List<Vec3> passed = new ArrayList<>();
    for (int v : order) {
      Vec3 at = mesh.vertex(v);
      if (passed.stream().anyMatch(p -> p.distance(at) < APART_MM)) {
        continue;
      }
      if (overhang.read(at).flagged()) {
        continue;
      }
      passed.add(at);
      found.add(new Deep(at, v, overhang.depth(v)));
      if (found.size() == MOST_PLACES) {
        break;
      }
    }
    return List.copyOf(found);
  }
}
