package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rodwork.anatomy.Arch;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;

/** Finds which triangles belong to which tooth, from one point a tooth. */
public final class ToothFinder {
  /** Around a point this much is surely its tooth [mm]. */
  private static final double SEED_RADIUS = 1.2;

  /** No crown reaches so far from the middle of its biting surface [mm]; handbook section 8. */
  private static final double FARTHEST = 11;

  private static final double FARTHEST_ACROSS = 7.5;

  /** A point farther from the cast than this was not meant for it [mm]. */
  private static final double OFF_CAST = 3;

  private ToothFinder() {}

  /**
   * Finds the teeth that have a point; all else is gum.
   *
   * @throws rodwork.geometry.Refusal where no points are given or one is off the cast; see {@link
   *     TeethProblem}
   * @throws java.util.concurrent.CancellationException if the watch says so
   */
  public static ToothFinding find(Arch arch, ToothHints hints, Watch watch) {
    List<ToothHints.Point> points = hints.points();
    if (points.isEmpty()) {
      throw TeethProblem.POINTS_NEEDED.with(0);
    }
    ConcavityGraph graph = new ConcavityGraph(arch);
    RandomWalker walker = new RandomWalker(graph, seeds(arch, graph, points));
    int n = graph.size();
    double[] best = walker.chance(ToothLabels.GUM, watch);
    double[] second = new double[n];
    int[] label = new int[n];
    for (int i = 0; i < points.size(); i++) {
      watch.progress("finding teeth", (double) i / points.size());
      int fdi = points.get(i).fdi();
      double[] chance = walker.chance(fdi, watch);
      for (int t = 0; t < n; t++) {
        if (chance[t] > best[t]) {
          second[t] = best[t];
          best[t] = chance[t];
          label[t] = fdi;
        } else {
          second[t] = Math.max(second[t], chance[t]);
        }
      }
    }
    Map<Integer, Double> lead = new TreeMap<>();
    Map<Integer, Double> area = new TreeMap<>();
    for (int t = 0; t < n; t++) {
      if (label[t] != ToothLabels.GUM) {
        lead.merge(label[t], graph.area[t] * Math.min(1, best[t] - second[t]), Double::sum);
        area.merge(label[t], graph.area[t], Double::sum);
      }
    }
    lead.replaceAll((fdi, sum) -> sum / Math.max(1e-12, area.getOrDefault(fdi, 0.0)));
    return new ToothFinding(ToothLabels.of(label), lead);
  }

  /** Discs about the points; rims and what no crown reaches as gum. */
  private static int[] seeds(Arch arch, ConcavityGraph graph, List<ToothHints.Point> points) {
    int n = graph.size();
    int[] seed = new int[n];
    Arrays.fill(seed, -1);
    double[] off = new double[points.size()];
    Arrays.fill(off, Double.POSITIVE_INFINITY);
    int[] closest = new int[points.size()];
    Vec3 up = arch.frame().z();
    for (int t = 0; t < n; t++) {
      double near = Double.POSITIVE_INFINITY;
      double across = Double.POSITIVE_INFINITY;
      int nearest = 0;
      for (int i = 0; i < off.length; i++) {
        Vec3 way = graph.centre[t].minus(points.get(i).at());
        double distance = way.length();
        if (distance < off[i]) {
          off[i] = distance;
          closest[i] = t;
        }
        across = Math.min(across, way.across(up).length());
        if (distance < near) {
          near = distance;
          nearest = i;
        }
      }
      if (near < SEED_RADIUS) {
        seed[t] = points.get(nearest).fdi();
      } else if (graph.atRim(t) || near > FARTHEST || across > FARTHEST_ACROSS) {
        seed[t] = ToothLabels.GUM;
      }
    }
    for (int i = 0; i < off.length; i++) {
      if (off[i] > OFF_CAST) {
        throw TeethProblem.POINT_OFF_CAST.with(points.get(i).fdi(), off[i], OFF_CAST);
      }
      seed[closest[i]] = points.get(i).fdi();
    }
    return seed;
  }
}
