package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The line along the middle of the crowns of an arch, seen from above, in steps of one length; and
 * for each cell how far along and how far off it lies.
 *
 * <p>Found in polar coordinates about a place amid the arch, as the mean radius of what is high in
 * each direction; three rounds, each about the line before.
 */
final class ArchPath {
  /** Length of a step along the line [mm]. */
  static final double STEP_MM = 0.25;

  private static final double BIN_RAD = Math.toRadians(3);
  private static final double WIDTH_RAD = Math.toRadians(5);
  private static final int BINS = 111;
  private static final double LEAST_RADIUS_MM = 8;
  private static final double HALF_BAND_MM = 7;
  private static final double ABOVE_MM = 6;
  private static final double LOWEST_TOP_MM = -7;
  private static final double CROWN_MM = 4.5;

  final double[] x;
  final double[] y;

  /** How far along each cell lies [steps]. */
  final double[] along;

  /** How far off the line each cell lies [mm], positive outwards at the front and on the sides. */
  final double[] off;

  private ArchPath(double[] x, double[] y, CellGraph graph) {
    this.x = x;
    this.y = y;
    along = new double[graph.size()];
    off = new double[graph.size()];
    int n = x.length;
    IntStream.range(0, graph.size())
        .parallel()
        .forEach(
            c -> {
              int at = nearest(graph.x(c), graph.y(c));
              int a = Math.max(0, at - 1);
              int b = Math.min(n - 1, at + 1);
              double tx = x[b] - x[a];
              double ty = y[b] - y[a];
              double length = Math.max(1e-9, Math.hypot(tx, ty));
              double dx = graph.x(c) - x[at];
              double dy = graph.y(c) - y[at];
              along[c] = at + (dx * tx + dy * ty) / length / STEP_MM;
              off[c] = (tx * dy - ty * dx) / length;
            });
  }

  /** The number of the step nearest to a place; coarse first, since the line is smooth. */
  int nearest(double px, double py) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int stride = 8, from = 0, to = x.length; stride >= 1; stride /= 8) {
      for (int i = from; i < to; i += stride) {
        double d = (x[i] - px) * (x[i] - px) + (y[i] - py) * (y[i] - py);
        if (d < least) {
          least = d;
          best = i;
        }
      }
      from = Math.max(0, best - stride);
      to = Math.min(x.length, best + stride + 1);
    }
    return best;
  }

  /** Direction of the line at a step, as a unit vector. */
  double[] direction(double step) {
    int at = (int) Math.max(0, Math.min(x.length - 1, Math.round(step)));
    int a = Math.max(0, at - 1);
    int b = Math.min(x.length - 1, at + 1);
    double length = Math.max(1e-9, Math.hypot(x[b] - x[a], y[b] - y[a]));
    return new double[] {(x[b] - x[a]) / length, (y[b] - y[a]) / length};
  }

  int steps() {
    return x.length;
  }

  /** The line of a cast, or an empty one where nothing is high enough. */
  static ArchPath of(CellGraph graph, boolean[] base) {
    int n = graph.size();
    double[] z = new double[n];
    double[] xs = new double[n];
    double[] ys = new double[n];
    int high = 0;
    for (int c = 0; c < n; c++) {
      z[c] = base[c] ? -99 : graph.z(c);
      if (z[c] > -4 && z[c] < 4) {
        xs[high] = graph.x(c);
        ys[high++] = graph.y(c);
      }
    }
    if (high < 10) {
      return new ArchPath(new double[0], new double[0], graph);
    }
    xs = Arrays.copyOf(xs, high);
    ys = Arrays.copyOf(ys, high);
    Arrays.sort(xs);
    Arrays.sort(ys);
    double front = ys[(int) (0.98 * (high - 1))];
    double rear = ys[(int) (0.02 * (high - 1))];
    double cy = rear + 0.42 * (front - rear);
    double cx = (xs[(int) (0.02 * (high - 1))] + xs[(int) (0.98 * (high - 1))]) / 2;
    double[] angle = new double[n];
    double[] radius = new double[n];
    for (int c = 0; c < n; c++) {
      angle[c] = Math.atan2(graph.x(c) - cx, graph.y(c) - cy);
      radius[c] = Math.hypot(graph.x(c) - cx, graph.y(c) - cy);
    }
    double[] first =
        round(
                graph,
                angle,
                radius,
                (c, line, top) -> {
                  double h = Math.max(0, Math.min(8, z[c] + 6));
                  return z[c] < ABOVE_MM && radius[c] > LEAST_RADIUS_MM ? h * h : 0;
                },
                new double[0],
                new double[BINS])
            .radius;
    Lines lines = new Lines(first, 0, BINS - 1);
    for (int i = 0; i < 3; i++) {
      double[] before = lines.radius;
      double[] top = tops(angle, radius, z, before);
      lines =
          round(
              graph,
              angle,
              radius,
              (c, line, t) ->
                  Math.abs(radius[c] - line) < HALF_BAND_MM && z[c] < ABOVE_MM && t > LOWEST_TOP_MM
                      ? Math.max(0, Math.min(4, z[c] - (t - CROWN_MM)))
                      : 0,
              before,
              top);
    }
    return stepped(lines, cx, cy, graph);
  }

  private record Lines(double[] radius, int from, int to) {}

  private interface Weight {
    double of(int cell, double line, double top);
  }

  private static double bin(int i) {
    return (i - BINS / 2) * BIN_RAD;
  }

  private static Lines round(
      CellGraph graph,
      double[] angle,
      double[] radius,
      Weight weight,
      double[] before,
      double[] top) {
    double[] sum = new double[BINS];
    double[] mean = new double[BINS];
    IntStream.range(0, BINS)
        .parallel()
        .forEach(
            i -> {
              double line = before.length == 0 ? 0 : before[i];
              for (int c = 0; c < angle.length; c++) {
                double turn = (angle[c] - bin(i)) / WIDTH_RAD;
                if (Math.abs(turn) < 4) {
                  double w =
                      Math.exp(-0.5 * turn * turn) * graph.area[c] * weight.of(c, line, top[i]);
                  sum[i] += w;
                  mean[i] += w * radius[c];
                }
              }
            });
    double most = Arrays.stream(sum).max().orElse(0);
    double[] some = Arrays.stream(sum).filter(s -> s > 0.05 * most).sorted().toArray();
    double enough = some.length == 0 ? 0 : 0.15 * some[some.length / 2];
    int[] good = IntStream.range(0, BINS).filter(i -> sum[i] > enough).toArray();
    if (good.length == 0) {
      return new Lines(new double[BINS], 0, 0);
    }
    double[] filled = new double[BINS];
    for (int i = 0, k = 0; i < BINS; i++) {
      while (k + 1 < good.length && good[k + 1] <= i) {
        k++;
      }
      int a = good[k];
      int b = good[Math.min(k + 1, good.length - 1)];
      double f = b > a ? Math.max(0, Math.min(1, (double) (i - a) / (b - a))) : 0;
      filled[i] = mean[a] / sum[a] * (1 - f) + mean[b] / sum[b] * f;
    }
    return new Lines(Smooth.of(filled, 1.2, true), good[0], good[good.length - 1]);
  }

  /** About how high the surface reaches near the line in each direction [mm]. */
  private static double[] tops(double[] angle, double[] radius, double[] z, double[] line) {
    double[] top = new double[BINS];
    IntStream.range(0, BINS)
        .parallel()
        .forEach(
            i -> {
              double[] heights =
                  IntStream.range(0, z.length)
                      .filter(
                          c ->
                              Math.abs(angle[c] - bin(i)) < 1.5 * WIDTH_RAD
                                  && Math.abs(radius[c] - line[i]) < HALF_BAND_MM
                                  && z[c] < ABOVE_MM)
                      .mapToDouble(c -> z[c])
                      .sorted()
                      .toArray();
              top[i] = heights.length < 5 ? -99 : heights[heights.length - 1 - heights.length / 20];
            });
    return top;
  }

  private static ArchPath stepped(Lines lines, double cx, double cy, CellGraph graph) {
    int fine = 2000;
    double from = bin(lines.from) - BIN_RAD;
    double to = bin(lines.to) + BIN_RAD;
    double[] px = new double[fine];
    double[] py = new double[fine];
    double[] s = new double[fine];
    for (int i = 0; i < fine; i++) {
      double a = from + (to - from) * i / (fine - 1);
      double r = Smooth.at(lines.radius, a / BIN_RAD + BINS / 2);
      px[i] = cx + r * Math.sin(a);
      py[i] = cy + r * Math.cos(a);
      s[i] = i == 0 ? 0 : s[i - 1] + Math.hypot(px[i] - px[i - 1], py[i] - py[i - 1]);
    }
    int n = (int) (s[fine - 1] / STEP_MM) + 1;
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0, k = 0; i < n; i++) {
      while (k + 2 < fine && s[k + 1] < i * STEP_MM) {
        k++;
      }
      double f = (i * STEP_MM - s[k]) / Math.max(1e-12, s[k + 1] - s[k]);
      x[i] = px[k] * (1 - f) + px[k + 1] * f;
      y[i] = py[k] * (1 - f) + py[k + 1] * f;
    }
    return new ArchPath(Smooth.of(x, 6, true), Smooth.of(y, 6, true), graph);
  }
}
