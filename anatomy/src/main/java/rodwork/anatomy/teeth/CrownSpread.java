package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rodwork.geometry.Watch;

/**
 * Spreads teeth from one place each over the cells of a cast: seeds where a crown surely is, gum at
 * rims and where none reaches, a faint prior between, and a random walk that decides.
 */
final class CrownSpread {
  /** Nothing this far off a crown's middle is crown; see {@link ToothReach#off}. */
  private static final double FARTHEST = 1.9;

  /** The whole prior of a mm² against walks across its sides, whose weights are near 1. */
  private static final double PRIOR_PER_MM2 = 3e-4;

  private static final double PRIOR_WIDTH = 0.55;

  /** From this far off all crowns on, the prior of gum rises to its full strength. */
  private static final double GUM_FROM = 1.0;

  private static final double GUM_OVER = 0.6;

  /** Label of each cell: an FDI number or 0. */
  final int[] label;

  /** How far the label's chance is ahead of the next [0 to 1]. */
  final double[] lead;

  private CrownSpread(int[] label, double[] lead) {
    this.label = label;
    this.lead = lead;
  }

  /**
   * Spreads the teeth.
   *
   * @param points of each tooth, in the arch frame [mm]
   * @param fixed label of cells that are known, −1 elsewhere
   */
  static CrownSpread of(CellGraph graph, Map<Integer, double[]> points, int[] fixed, Watch watch) {
    List<ToothReach> reaches = ToothReach.of(points);
    int n = graph.size();
    int teeth = reaches.size();
    double[][] off = new double[teeth][n];
    int[] seed = fixed.clone();
    double[] least = new double[n];
    double[] pull = new double[n];
    IntStream.range(0, n)
        .parallel()
        .forEach(
            c -> {
              double x = graph.x(c);
              double y = graph.y(c);
              double z = graph.z(c);
              least[c] = Double.POSITIVE_INFINITY;
              double nearest = Double.POSITIVE_INFINITY;
              for (int i = 0; i < teeth; i++) {
                ToothReach reach = reaches.get(i);
                off[i][c] = reach.off(x, y, z);
                least[c] = Math.min(least[c], off[i][c]);
                pull[c] += prior(off[i][c]);
                double distance = reach.distance(x, y, z);
                if (fixed[c] < 0 && distance < nearest && reach.core(x, y, z)) {
                  seed[c] = reach.fdi;
                  nearest = distance;
                }
              }
              if (seed[c] < 0 && (graph.rim[c] || least[c] > FARTHEST)) {
                seed[c] = ToothLabels.GUM;
              }
              double gum = Math.max(0, Math.min(1, (least[c] - GUM_FROM) / GUM_OVER));
              pull[c] = (pull[c] + gum) * PRIOR_PER_MM2 * graph.area[c];
            });
    for (ToothReach reach : reaches) {
      int closest = closest(graph, reach);
      if (fixed[closest] < 0) {
        seed[closest] = reach.fdi;
      }
    }
    RandomWalker walker = new RandomWalker(graph, seed, pull);
    double[][] chances = new double[teeth][];
    int[][] cells = new int[teeth][];
    IntStream.range(0, teeth)
        .parallel()
        .forEach(
            i -> {
              int fdi = reaches.get(i).fdi;
              cells[i] =
                  IntStream.range(0, n)
                      .filter(c -> off[i][c] <= FARTHEST || seed[c] == fdi)
                      .toArray();
              double[] prior = new double[cells[i].length];
              for (int k = 0; k < prior.length; k++) {
                int c = cells[i][k];
                prior[k] = prior(off[i][c]) * PRIOR_PER_MM2 * graph.area[c];
              }
              chances[i] = walker.chance(fdi, cells[i], prior, watch);
            });
    double[] gum = new double[n];
    double[] best = new double[n];
    double[] second = new double[n];
    int[] label = new int[n];
    Arrays.fill(gum, 1);
    for (int i = 0; i < teeth; i++) {
      for (int k = 0; k < cells[i].length; k++) {
        int c = cells[i][k];
        double chance = chances[i][k];
        gum[c] -= chance;
        if (chance > best[c]) {
          second[c] = best[c];
          best[c] = chance;
          label[c] = reaches.get(i).fdi;
        } else {
          second[c] = Math.max(second[c], chance);
        }
      }
    }
    double[] lead = new double[n];
    for (int c = 0; c < n; c++) {
      if (seed[c] >= 0) {
        label[c] = seed[c];
        lead[c] = 1;
      } else if (gum[c] >= best[c]) {
        label[c] = ToothLabels.GUM;
        lead[c] = gum[c] - best[c];
      } else {
        lead[c] = best[c] - Math.max(second[c], gum[c]);
      }
    }
    return new CrownSpread(label, lead);
  }

  private static double prior(double off) {
    double square = (off / PRIOR_WIDTH) * (off / PRIOR_WIDTH);
    return Math.exp(-0.5 * square * square);
  }

  private static int closest(CellGraph graph, ToothReach reach) {
    int closest = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int c = 0; c < graph.size(); c++) {
      double distance = reach.distance(graph.x(c), graph.y(c), graph.z(c));
      if (distance < least) {
        least = distance;
        closest = c;
      }
    }
    return closest;
  }

  /** How sure each tooth is: the mean lead over its area [0 to 1]. */
  Map<Integer, Double> certainty(CellGraph graph) {
    Map<Integer, Double> sum = new TreeMap<>();
    Map<Integer, Double> area = new TreeMap<>();
    for (int c = 0; c < label.length; c++) {
      if (label[c] != ToothLabels.GUM) {
        sum.merge(label[c], graph.area[c] * Math.max(0, Math.min(1, lead[c])), Double::sum);
        area.merge(label[c], graph.area[c], Double::sum);
      }
    }
    sum.replaceAll((fdi, s) -> s / Math.max(1e-12, area.getOrDefault(fdi, 0.0)));
    return sum;
  }
}
