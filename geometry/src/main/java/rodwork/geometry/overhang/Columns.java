package rodwork.geometry.overhang;

import rodwork.geometry.Parallel;
import rodwork.geometry.Watch;

/**
 * The triangles of a projected mesh, sorted into the square columns of an upright grid.
 *
 * <p>Answers what lies over a horizontal position: the upper envelope {@code h(y)}, and whether
 * anything lies above a level. Points on the edge of a triangle count as covered, with a tolerance
 * that only bridges rounding ({@link #EDGE_SLACK_MM2}), so that no ray slips between neighbours.
 * Triangles that are upright to the last bit cover nothing and are left out.
 */
final class Columns {
  /**
   * Slack of the point-in-triangle test, as twice the area of the triangle of edge and point [mm²].
   * Rounding of that product on a cast (coordinates to 100 mm, edges to 60 mm) stays below 1e-12.
   */
  static final double EDGE_SLACK_MM2 = 1e-11;

  /** Heights closer than this are one height [mm]: far below any scan, far above rounding. */
  static final double LEVEL_SLACK_MM = 1e-7;

  /** Widening of the boxes [mm]: above the rounding of a float coordinate of a cast (8e-6). */
  private static final double BOX_SLACK_MM = 3e-5;

  static final int BOX = 8;
  static final int LOW = 4;
  static final int HIGH = 5;

  private static final int PARTS = 4;

  /** Fewer triangles than this are sorted in one part: each part counts for all columns. */
  private static final int SMALL = 40_000;

  private static final int[] COUNT_ONLY = {};

  final Projection at;
  final int[] corners;
  final double cell;
  final double x0;
  final double y0;
  final int nx;
  final int ny;

  /** Column {@code c = iy * nx + ix} holds {@code items[start[c]]} up to {@code start[c + 1]}. */
  final int[] start;

  final int[] items;

  /**
   * A box around each triangle, one cache line apiece: least and greatest x and y against the
   * corner of the grid, least and greatest height, two unused [mm]. Widened by {@link
   * #BOX_SLACK_MM}, so that a test on the box never excludes wrongly.
   */
  final float[] box;

  Columns(Projection at, int[] corners, double wantedCell, Watch watch) {
    this.at = at;
    this.corners = corners;
    int triangles = corners.length / 3;
    double minX = Double.POSITIVE_INFINITY;
    double minY = Double.POSITIVE_INFINITY;
    double maxX = Double.NEGATIVE_INFINITY;
    double maxY = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < at.x.length; v++) {
      minX = Math.min(minX, at.x[v]);
      maxX = Math.max(maxX, at.x[v]);
      minY = Math.min(minY, at.y[v]);
      maxY = Math.max(maxY, at.y[v]);
    }
    double size = wantedCell;
    while ((maxX - minX) / size * ((maxY - minY) / size) > 1 << 22) {
      size *= 1.5;
    }
    this.cell = size;
    // A rim of empty columns keeps every search inside the arrays.
    this.x0 = minX - 1.5 * size;
    this.y0 = minY - 1.5 * size;
    this.nx = (int) ((maxX - minX) / size) + 4;
    this.ny = (int) ((maxY - minY) / size) + 4;
    this.box = new float[BOX * triangles];

    // Each part of the triangles counts for itself, so that all parts can be filled at once and the
    // order within a column stays that of the triangles.
    int cells = nx * ny;
    int parts = triangles < SMALL ? 1 : PARTS;
    int[][] counts = new int[parts][];
    int chunk = Math.max(1, (triangles + parts - 1) / parts);
    Parallel.chunks(
        triangles,
        chunk,
        watch,
        (from, to) -> {
          int[] mine = new int[cells];
          counts[from / chunk] = mine;
          new Scatter().run(from, to, mine, COUNT_ONLY);
        });
    this.start = new int[cells + 1];
    int sum = 0;
    for (int c = 0; c < cells; c++) {
      start[c] = sum;
      for (int[] part : counts) {
        if (part != null) {
          int here = part[c];
          part[c] = sum;
          sum += here;
        }
      }
    }
    start[cells] = sum;
    this.items = new int[sum];
    Parallel.chunks(
        triangles,
        chunk,
        watch,
        (from, to) -> new Scatter().run(from, to, counts[from / chunk], items));
  }

  /** Visits the columns a triangle may touch; first to count, then to write. */
  private final class Scatter {
    void run(int from, int to, int[] cursor, int[] out) {
      double[] x = at.x;
      double[] y = at.y;
      double[] z = at.z;
      double inverse = 1 / cell;
      for (int t = from; t < to; t++) {
        int a = corners[3 * t];
        int b = corners[3 * t + 1];
        int c = corners[3 * t + 2];
        double ax = x[a];
        double ay = y[a];
        double bx = x[b];
        double by = y[b];
        double cx = x[c];
        double cy = y[c];
        double minX = Math.min(ax, Math.min(bx, cx)) - x0;
        double maxX = Math.max(ax, Math.max(bx, cx)) - x0;
        double minY = Math.min(ay, Math.min(by, cy)) - y0;
        double maxY = Math.max(ay, Math.max(by, cy)) - y0;
        if (out == COUNT_ONLY) {
          int o = BOX * t;
          box[o] = (float) (minX - BOX_SLACK_MM);
          box[o + 1] = (float) (maxX + BOX_SLACK_MM);
          box[o + 2] = (float) (minY - BOX_SLACK_MM);
          box[o + 3] = (float) (maxY + BOX_SLACK_MM);
          box[o + LOW] = (float) (Math.min(z[a], Math.min(z[b], z[c])) - BOX_SLACK_MM);
          box[o + HIGH] = (float) (Math.max(z[a], Math.max(z[b], z[c])) + BOX_SLACK_MM);
        }
        if ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax) == 0) {
          continue;
        }
        int ix0 = (int) (minX * inverse);
        int ix1 = (int) (maxX * inverse);
        int iy0 = (int) (minY * inverse);
        int iy1 = (int) (maxY * inverse);
        if ((ix1 - ix0) * (iy1 - iy0) < 6) {
          for (int iy = iy0; iy <= iy1; iy++) {
            for (int c0 = iy * nx + ix0, c1 = iy * nx + ix1; c0 <= c1; c0++) {
              if (out == COUNT_ONLY) {
                cursor[c0]++;
              } else {
                out[cursor[c0]++] = t;
              }
            }
          }
        } else {
          wide(t, iy0, iy1, cursor, out);
        }
      }
    }

    /** A triangle much larger than a column: only the stretch of each row that it reaches. */
    private void wide(int t, int iy0, int iy1, int[] cursor, int[] out) {
      for (int iy = iy0; iy <= iy1; iy++) {
        double lowY = y0 + iy * cell;
        double highY = lowY + cell;
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
          int v = corners[3 * t + k];
          int w = corners[3 * t + (k + 1) % 3];
          double ya = at.y[v];
          double yb = at.y[w];
          if (Math.max(ya, yb) < lowY || Math.min(ya, yb) > highY) {
            continue;
          }
          double xa = at.x[v];
          double xb = at.x[w];
          double s0 = ya == yb ? 0 : clamp((lowY - ya) / (yb - ya));
          double s1 = ya == yb ? 1 : clamp((highY - ya) / (yb - ya));
          double xs0 = xa + s0 * (xb - xa);
          double xs1 = xa + s1 * (xb - xa);
          left = Math.min(left, Math.min(xs0, xs1));
          right = Math.max(right, Math.max(xs0, xs1));
        }
        if (left > right) {
          continue;
        }
        int ix0 = Math.max(0, (int) ((left - x0) / cell - 1e-6));
        int ix1 = Math.min(nx - 1, (int) ((right - x0) / cell + 1e-6));
        for (int c0 = iy * nx + ix0, c1 = iy * nx + ix1; c0 <= c1; c0++) {
          if (out == COUNT_ONLY) {
            cursor[c0]++;
          } else {
            out[cursor[c0]++] = t;
          }
        }
      }
    }
  }

  static double clamp(double s) {
    return s < 0 ? 0 : s > 1 ? 1 : s;
  }

  /** Column of a horizontal position; −1 outside the grid, where nothing lies. */
  int column(double px, double py) {
    int ix = (int) Math.floor((px - x0) / cell);
    int iy = (int) Math.floor((py - y0) / cell);
    return ix < 0 || iy < 0 || ix >= nx || iy >= ny ? -1 : iy * nx + ix;
  }

  /** Whether any triangle lies above (px, py, level). */
  boolean covered(double px, double py, double level) {
    return cover(px, py, level) >= 0;
  }

  /** A triangle that lies above (px, py, level); −1 if none does. */
  int cover(double px, double py, double level) {
    int c = column(px, py);
    if (c < 0) {
      return -1;
    }
    double floor = level + LEVEL_SLACK_MM;
    float x = (float) (px - x0);
    float y = (float) (py - y0);
    float z = (float) floor;
    for (int i = start[c], end = start[c + 1]; i < end; i++) {
      int t = items[i];
      int o = BOX * t;
      if (box[o + HIGH] > z && around(o, x, y) && heightOf(t, px, py) > floor) {
        return t;
      }
    }
    return -1;
  }

  /** The highest triangle over (px, py); −1 where there is none. */
  int highest(double px, double py) {
    int c = column(px, py);
    if (c < 0) {
      return -1;
    }
    int best = -1;
    double top = Double.NEGATIVE_INFINITY;
    float x = (float) (px - x0);
    float y = (float) (py - y0);
    for (int i = start[c], end = start[c + 1]; i < end; i++) {
      int t = items[i];
      int o = BOX * t;
      if (box[o + HIGH] > top && around(o, x, y)) {
        double h = heightOf(t, px, py);
        if (h > top) {
          top = h;
          best = t;
        }
      }
    }
    return best;
  }

  private boolean around(int o, float x, float y) {
    return x >= box[o] && x <= box[o + 1] && y >= box[o + 2] && y <= box[o + 3];
  }

  /** Height of a triangle over (px, py) [mm]; −∞ where it does not cover the position. */
  double heightOf(int t, double px, double py) {
    int a = corners[3 * t];
    int b = corners[3 * t + 1];
    int c = corners[3 * t + 2];
    double ax = at.x[a] - px;
    double ay = at.y[a] - py;
    double bx = at.x[b] - px;
    double by = at.y[b] - py;
    double cx = at.x[c] - px;
    double cy = at.y[c] - py;
    double u = bx * cy - by * cx;
    double v = cx * ay - cy * ax;
    double w = ax * by - ay * bx;
    double area = u + v + w;
    boolean in =
        area > 0
            ? u >= -EDGE_SLACK_MM2 && v >= -EDGE_SLACK_MM2 && w >= -EDGE_SLACK_MM2
            : u <= EDGE_SLACK_MM2 && v <= EDGE_SLACK_MM2 && w <= EDGE_SLACK_MM2;
    if (!in) {
      return Double.NEGATIVE_INFINITY;
    }
    double h = (u * at.z[a] + v * at.z[b] + w * at.z[c]) / area;
    // On slivers the quotient can run away; a triangle is nowhere above its highest corner.
    double high = Math.max(at.z[a], Math.max(at.z[b], at.z[c]));
    double low = Math.min(at.z[a], Math.min(at.z[b], at.z[c]));
    return h > high ? high : h < low ? low : h;
  }
}
