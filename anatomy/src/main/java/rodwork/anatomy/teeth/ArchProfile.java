package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What is seen step by step along an arch: how high it is, how strongly the surface folds inwards
 * across the arch there (between two teeth it does), and how likely it is crown at all, by its
 * height under the tops around and by how rough its surface is: cusps, fissures and margins bend,
 * ridges and tuberosities are smooth.
 *
 * <p>Measured on the labelled arches: roughness 0.17 to 0.36 per mm on crowns, 0.03 to 0.15 on
 * ridges and tuberosities.
 */
final class ArchProfile {
  private static final double NO_SURFACE_MM = -12;
  private static final double HALF_WIDTH_MM = 6;
  private static final double FOLD_HALF_WIDTH_MM = 7;
  private static final double FOLD_BELOW_MM = 6;
  private static final double FOLD_ABOVE_MM = 3;
  private static final double ROUGH_BELOW_MM = 4;
  private static final double SHARPEST = 2;
  private static final double ROUGHEST = 1.5;

  /** Halfway between crowns and ridges [1/mm] and the step that tells them apart. */
  private static final double ROUGH_HALF = 0.155;

  private static final double ROUGH_STEP = 0.03;
  private static final double LOW_HALF_MM = -2.6;
  private static final double LOW_STEP_MM = 0.8;

  /** How steeply the level of crowns may fall along the arch, so that a long ridge stays low. */
  private static final double LEVEL_FALL = 0.2;

  private static final double LEVEL_UNDER_PLANE_MM = 4;

  /** Height of the arch [mm], {@value #NO_SURFACE_MM} where there is nothing. */
  final double[] height;

  /** Inward fold across the arch; 1 is among the strongest of this arch. */
  final double[] fold;

  /** Likelihood of crown [0 to 1]. */
  final double[] crown;

  ArchProfile(CellGraph graph, ArchPath path, boolean[] base) {
    int n = path.steps();
    height = heights(graph, path, base, n);
    double[] level = Smooth.of(Arrays.stream(height).map(h -> Math.max(h, -4)).toArray(), 8, true);
    double[] top =
        Smooth.of(Arrays.stream(height).map(h -> Math.max(h, NO_SURFACE_MM)).toArray(), 4, true);
    double[] folds = new double[n];
    double[] bend = new double[n];
    double[] area = new double[n];
    for (int c = 0; c < graph.size(); c++) {
      for (int l = graph.start[c]; l < graph.start[c + 1]; l++) {
        int d = graph.to[l];
        if (d < c || base[c] || base[d]) {
          continue;
        }
        double s = (path.along[c] + path.along[d]) / 2;
        int at = (int) Math.round(s);
        if (at < 0 || at >= n) {
          continue;
        }
        double z = (graph.z(c) + graph.z(d)) / 2;
        double off = Math.abs(path.off[c] + path.off[d]) / 2;
        double size = graph.length[l] * graph.distance[l];
        double under = Smooth.at(level, s) - z;
        if (under < FOLD_BELOW_MM && under > -FOLD_ABOVE_MM && off < FOLD_HALF_WIDTH_MM) {
          double[] way = path.direction(s);
          double along =
              ((graph.x(d) - graph.x(c)) * way[0] + (graph.y(d) - graph.y(c)) * way[1])
                  / graph.distance[l];
          double k = Math.max(0, Math.min(SHARPEST, graph.concavity[l]));
          folds[at] += k * size * along * along;
        }
        if (Smooth.at(top, s) - z < ROUGH_BELOW_MM && off < HALF_WIDTH_MM && s > 0 && s < n - 1) {
          bend[at] += Math.min(ROUGHEST, Math.abs(graph.concavity[l])) * size;
          area[at] += size;
        }
      }
    }
    double[] low = Smooth.of(under(path), 1.5, true);
    double[] bends = Smooth.of(bend, 4, true);
    double[] areas = Smooth.of(area, 4, true);
    crown = new double[n];
    for (int i = 0; i < n; i++) {
      double rough = bends[i] / (areas[i] + 1e-6);
      double sum =
          clip((rough - ROUGH_HALF) / ROUGH_STEP, -3, 1.2)
              + clip((low[i] - LOW_HALF_MM) / LOW_STEP_MM, -4, 1);
      crown[i] = 1 / (1 + Math.exp(-sum));
    }
    double[] smooth = Smooth.of(folds, 1.6, true);
    double[] onCrown =
        IntStream.range(0, n).filter(i -> crown[i] > 0.5).mapToDouble(i -> smooth[i]).toArray();
    Arrays.sort(onCrown);
    double strong = onCrown.length == 0 ? 0 : onCrown[(int) (0.9 * (onCrown.length - 1))];
    fold = Arrays.stream(smooth).map(f -> strong > 0 ? clip(f / strong, 0, 1.4) : 0).toArray();
  }

  private static double[] heights(CellGraph graph, ArchPath path, boolean[] base, int n) {
    double[][] found = new double[n][8];
    int[] count = new int[n];
    for (int c = 0; c < graph.size(); c++) {
      if (base[c] || Math.abs(path.off[c]) >= HALF_WIDTH_MM) {
        continue;
      }
      int from = (int) Math.max(0, Math.floor(path.along[c] - 2.5) + 1);
      int to = (int) Math.min(n - 1, Math.ceil(path.along[c] + 2.5) - 1);
      for (int j = from; j <= to; j++) {
        if (count[j] == found[j].length) {
          found[j] = Arrays.copyOf(found[j], 2 * count[j]);
        }
        found[j][count[j]++] = graph.z(c);
      }
    }
    double[] height = new double[n];
    for (int j = 0; j < n; j++) {
      Arrays.sort(found[j], 0, count[j]);
      height[j] = count[j] == 0 ? NO_SURFACE_MM : found[j][count[j] - Math.max(1, count[j] / 12)];
    }
    return height;
  }

  /** Height over the level of crowns around [mm], negative below it. */
  private double[] under(ArchPath path) {
    int n = height.length;
    double[] plane = plane(path);
    double[] smooth = Smooth.of(height, 2, true);
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      level[i] = plane[i] - LEVEL_UNDER_PLANE_MM;
      for (int j = 0; j < n; j++) {
        double fall = LEVEL_FALL * Math.abs(i - j) * ArchPath.STEP_MM;
        level[i] = Math.max(level[i], smooth[j] - fall);
      }
    }
    double[] even = Smooth.of(level, 8, true);
    double[] under = new double[n];
    for (int i = 0; i < n; i++) {
      under[i] = height[i] - even[i];
    }
    return under;
  }

  /** A plane on the heights, by least squares that soon forget what lies below it. */
  private double[] plane(ArchPath path) {
    int n = height.length;
    double[] weight = new double[n];
    double[] plane = new double[n];
    for (int i = 0; i < n; i++) {
      weight[i] = height[i] > -8 ? 1 : 0;
    }
    for (int round = 0; round < 25; round++) {
      double[][] m = new double[3][4];
      for (int i = 0; i < n; i++) {
        double[] row = {1, path.x[i] / 20, path.y[i] / 20, height[i]};
        for (int a = 0; a < 3; a++) {
          for (int b = 0; b < 4; b++) {
            m[a][b] += weight[i] * row[a] * row[b];
          }
        }
      }
      for (int a = 0; a < 3; a++) {
        m[a][a] += 1e-9;
      }
      double[] q = solved(m);
      for (int i = 0; i < n; i++) {
        plane[i] = q[0] + q[1] * path.x[i] / 20 + q[2] * path.y[i] / 20;
        double r = (height[i] - plane[i]) / 1.5;
        weight[i] = r < 0 ? 0.3 * Math.exp(-r * r) + 1e-3 : 1 / (1 + r * r);
      }
    }
    return plane;
  }

  private static double[] solved(double[][] m) {
    for (int a = 0; a < 3; a++) {
      for (int b = a + 1; b < 3; b++) {
        double f = m[b][a] / m[a][a];
        for (int k = a; k < 4; k++) {
          m[b][k] -= f * m[a][k];
        }
      }
    }
    double[] q = new double[3];
    for (int a = 2; a >= 0; a--) {
      q[a] = m[a][3];
      for (int b = a + 1; b < 3; b++) {
        q[a] -= m[a][b] * q[b];
      }
      q[a] /= m[a][a];
    }
    return q;
  }

  private static double clip(double v, double low, double high) {
    return Math.max(low, Math.min(high, v));
  }
}
