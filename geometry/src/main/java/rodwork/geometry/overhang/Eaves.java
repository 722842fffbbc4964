package rodwork.geometry.overhang;

import java.util.Arrays;
import rodwork.geometry.Parallel;
import rodwork.geometry.Watch;

/**
 * The places where the surface, seen from above, drops off: edges at which it folds under or ends,
 * cut into pieces along which one and the same surface lies below.
 *
 * <p>A piece is a straight segment with a height at each end (its top, the fold itself) and, just
 * outside of it, the height of what comes next below (its foot). At a level L the piece bounds the
 * shadow of everything above L exactly where {@code foot <= L < top}. Together with the level lines
 * of the visible surface the pieces are the whole boundary of that shadow.
 *
 * <p>Edges are cut where other folds cross them in projection, so that what lies below changes
 * continuously along a piece; foot heights are taken at both ends and are linear between, exact
 * where one plane lies below. Pieces with something above them everywhere are left out.
 */
final class Eaves {
  /**
   * Numbers a piece: x0, y0, x1, y1, top0, top1, foot0, foot1 [mm]; the outside lies on the left.
   */
  static final int STRIDE = 8;

  /**
   * How far outside the edge the foot is looked up [mm]; far below scan noise, far above rounding.
   */
  static final double OUTSIDE_MM = 1e-6;

  /** How far from the ends of a piece its foot is looked up, as a share of its length. */
  private static final double INSET = 0.01;

  /** How far the foot may stand off the straight line between the ends of a piece [mm]. */
  static final double FOOT_ERROR_MM = 0.004;

  /** Pieces are not halved below this length [mm]. */
  private static final double SHORTEST_MM = 0.02;

  /** Height of the foot where nothing lies below [mm]: far below any cast. */
  static final double NOTHING_BELOW = -1e9;

  private static final int CHUNK = 1 << 11;

  final double[] pieces;

  /** The mesh edge that each piece is part of. */
  final int[] edges;

  /** Column c is reached by {@code items[start[c]]} up to {@code start[c + 1]}. */
  final int[] start;

  final int[] items;

  /** Triangles seen just outside a visible piece. */
  final int[] seen;

  private Eaves(double[] pieces, int[] edges, int[] start, int[] items, int[] seen) {
    this.pieces = pieces;
    this.edges = edges;
    this.start = start;
    this.items = items;
    this.seen = seen;
  }

  int count() {
    return edges.length;
  }

  static Eaves of(CasterMesh table, Columns columns, Watch watch) {
    return of(table, columns, folds(table, columns.at, watch), watch);
  }

  /**
   * The pieces that matter to levels asked about.
   *
   * @param lowest for each column the lowest such level that can be reached from there; +∞ where
   *     none can
   */
  static Eaves above(CasterMesh table, Columns columns, float[] lowest, Watch watch) {
    Projection at = columns.at;
    Box box = new Box(columns);
    int[] folds =
        Arrays.stream(folds(table, at, watch))
            .filter(
                fold -> {
                  int a = table.ends[2 * (fold >> 1)];
                  int b = table.ends[2 * (fold >> 1) + 1];
                  box.set(at.x[a], at.y[a], at.x[b], at.y[b]);
                  return box.anyBelow(lowest, Math.max(at.z[a], at.z[b]));
                })
            .toArray();
    return of(table, columns, folds, watch);
  }

  private static Eaves of(CasterMesh table, Columns columns, int[] folds, Watch watch) {
    Lists lists = Lists.ofEdges(table, columns, folds);
    int n = folds.length;
    int chunks = (n + CHUNK - 1) / CHUNK;
    Cutter[] parts = new Cutter[chunks];
    Parallel.chunks(
        n,
        CHUNK,
        watch,
        (from, to) -> {
          Cutter cutter = new Cutter(table, columns, folds, lists);
          for (int i = from; i < to; i++) {
            cutter.cut(i);
          }
          parts[from / CHUNK] = cutter;
        });
    int count = 0;
    for (Cutter part : parts) {
      count += part.count;
    }
    double[] pieces = new double[STRIDE * count];
    int[] edges = new int[count];
    int[] seen = new int[2 * count];
    int at = 0;
    for (Cutter part : parts) {
      System.arraycopy(part.pieces, 0, pieces, STRIDE * at, STRIDE * part.count);
      System.arraycopy(part.edges, 0, edges, at, part.count);
      System.arraycopy(part.seen, 0, seen, 2 * at, 2 * part.count);
      at += part.count;
    }
    Lists byColumn = Lists.ofPieces(pieces, count, columns);
    return new Eaves(pieces, edges, byColumn.start, byColumn.items, seen);
  }

  /**
   * The edges that can bound a shadow, as {@code 2 * edge + side}: side 1 where the outside lies to
   * the left of the edge (lower to higher vertex), 0 where it lies to the right.
   */
  private static int[] folds(CasterMesh table, Projection at, Watch watch) {
    int n = table.count;
    int chunk = 1 << 15;
    int[][] parts = new int[(n + chunk - 1) / chunk][];
    Parallel.chunks(
        n,
        chunk,
        watch,
        (from, to) -> {
          int[] found = new int[256];
          int count = 0;
          for (int e = from; e < to; e++) {
            int a = table.ends[2 * e];
            int b = table.ends[2 * e + 1];
            double ax = at.x[a];
            double ay = at.y[a];
            double dx = at.x[b] - ax;
            double dy = at.y[b] - ay;
            int o0 = table.opposite[2 * e];
            int o1 = table.opposite[2 * e + 1];
            double s0 = dx * (at.y[o0] - ay) - dy * (at.x[o0] - ax);
            double s1 = o1 < 0 ? 0 : dx * (at.y[o1] - ay) - dy * (at.x[o1] - ax);
            boolean left;
            boolean right;
            if (table.nonManifold[e]) {
              left = true;
              right = true;
            } else {
              right = s0 >= 0 && s1 >= 0 && (s0 > 0 || s1 > 0);
              left = s0 <= 0 && s1 <= 0 && (s0 < 0 || s1 < 0);
            }
            if (count + 2 > found.length) {
              found = Arrays.copyOf(found, 2 * found.length);
            }
            if (right) {
              found[count++] = 2 * e;
            }
            if (left) {
              found[count++] = 2 * e + 1;
            }
          }
          parts[from / chunk] = Arrays.copyOf(found, count);
        });
    int total = 0;
    for (int[] part : parts) {
      total += part.length;
    }
    int[] all = new int[total];
    int filled = 0;
    for (int[] part : parts) {
      System.arraycopy(part, 0, all, filled, part.length);
      filled += part.length;
    }
    return all;
  }

  /** Which segments reach each column (by their bounding boxes). */
  private record Lists(int[] start, int[] items) {
    static Lists ofEdges(CasterMesh table, Columns columns, int[] folds) {
      Projection at = columns.at;
      return of(
          folds.length,
          columns,
          (i, box) -> {
            int a = table.ends[2 * (folds[i] >> 1)];
            int b = table.ends[2 * (folds[i] >> 1) + 1];
            box.set(at.x[a], at.y[a], at.x[b], at.y[b]);
          });
    }

    static Lists ofPieces(double[] p, int count, Columns columns) {
      return of(
          count,
          columns,
          (i, box) -> {
            int o = STRIDE * i;
            box.set(p[o], p[o + 1], p[o + 2], p[o + 3]);
          });
    }

    private static Lists of(int n, Columns columns, Boxes boxes) {
      int cells = columns.nx * columns.ny;
      int[] start = new int[cells + 1];
      Box box = new Box(columns);
      for (int i = 0; i < n; i++) {
        boxes.box(i, box);
        for (int iy = box.iy0; iy <= box.iy1; iy++) {
          for (int ix = box.ix0; ix <= box.ix1; ix++) {
            start[iy * columns.nx + ix + 1]++;
          }
        }
      }
      for (int c = 0; c < cells; c++) {
        start[c + 1] += start[c];
      }
      int[] cursor = Arrays.copyOf(start, cells);
      int[] items = new int[start[cells]];
      for (int i = 0; i < n; i++) {
        boxes.box(i, box);
        for (int iy = box.iy0; iy <= box.iy1; iy++) {
          for (int ix = box.ix0; ix <= box.ix1; ix++) {
            items[cursor[iy * columns.nx + ix]++] = i;
          }
        }
      }
      return new Lists(start, items);
    }
  }

  @FunctionalInterface
  private interface Boxes {
    void box(int i, Box box);
  }

  /** The columns that the bounding box of a segment touches. */
  private static final class Box {
    private final Columns columns;
    private int ix0;
    private int ix1;
    private int iy0;
    private int iy1;

    Box(Columns columns) {
      this.columns = columns;
    }

    void set(double ax, double ay, double bx, double by) {
      double inverse = 1 / columns.cell;
      ix0 = (int) ((Math.min(ax, bx) - columns.x0) * inverse);
      ix1 = (int) ((Math.max(ax, bx) - columns.x0) * inverse);
      iy0 = (int) ((Math.min(ay, by) - columns.y0) * inverse);
      iy1 = (int) ((Math.max(ay, by) - columns.y0) * inverse);
    }

    /** Whether in any of these columns a level lies below a height. */
    boolean anyBelow(float[] level, double height) {
      for (int iy = iy0; iy <= iy1; iy++) {
        for (int ix = ix0; ix <= ix1; ix++) {
          if (level[iy * columns.nx + ix] < height) {
            return true;
          }
        }
      }
      return false;
    }
  }

  /** Cuts folds into pieces and keeps those that can be seen from above somewhere. */
  private static final class Cutter {
    private final CasterMesh table;
    private final Columns columns;
    private final int[] folds;
    private final Lists lists;
    private double[] cuts = new double[64];
    private int cutCount;
    private double[] pieces = new double[STRIDE * 1024];
    private int[] edges = new int[1024];
    private int[] seen = new int[2048];
    private int count;

    private int edge;
    private boolean left;
    private double ax;
    private double ay;
    private double az;
    private double dx;
    private double dy;
    private double dz;
    private double length;
    private double outX;
    private double outY;
    private int last;

    Cutter(CasterMesh table, Columns columns, int[] folds, Lists lists) {
      this.table = table;
      this.columns = columns;
      this.folds = folds;
      this.lists = lists;
    }

    void cut(int i) {
      Projection at = columns.at;
      edge = folds[i] >> 1;
      int a = table.ends[2 * edge];
      int b = table.ends[2 * edge + 1];
      ax = at.x[a];
      ay = at.y[a];
      az = at.z[a];
      dx = at.x[b] - ax;
      dy = at.y[b] - ay;
      dz = at.z[b] - az;
      length = Math.sqrt(dx * dx + dy * dy);
      if (length == 0) {
        return;
      }
      left = (folds[i] & 1) == 1;
      double side = left ? OUTSIDE_MM / length : -OUTSIDE_MM / length;
      outX = -dy * side;
      outY = dx * side;
      cutCount = 0;
      addCut(0);
      addCut(1);
      int even = (int) (length / columns.cell);
      for (int k = 1; k <= even; k++) {
        addCut(k / (even + 1.0));
      }
      crossings();
      Arrays.sort(cuts, 0, cutCount);
      for (int k = 0; k + 1 < cutCount; k++) {
        double s0 = cuts[k];
        double s1 = cuts[k + 1];
        if ((s1 - s0) * length >= 1e-7) {
          double inset = INSET * (s1 - s0);
          double foot0 = foot(s0 + inset);
          int seen0 = last;
          double foot1 = foot(s1 - inset);
          if (foot0 < az + (s0 + inset) * dz || foot1 < az + (s1 - inset) * dz) {
            halve(s0, s1, foot0, foot1, seen0, last);
          }
        }
      }
    }

    /** Keeps a piece, in halves as long as its foot is not straight between its ends. */
    private void halve(double s0, double s1, double foot0, double foot1, int seen0, int seen1) {
      if (seen0 != seen1 && (s1 - s0) * length > SHORTEST_MM) {
        double middle = (s0 + s1) / 2;
        double foot = foot(middle);
        int seen = last;
        if (Math.abs(foot - (foot0 + foot1) / 2) > FOOT_ERROR_MM) {
          halve(s0, middle, foot0, foot, seen0, seen);
          halve(middle, s1, foot, foot1, seen, seen1);
          return;
        }
      }
      keep(s0, s1, foot0, foot1, seen0, seen1);
    }

    private double foot(double s) {
      double px = ax + s * dx + outX;
      double py = ay + s * dy + outY;
      last = columns.highest(px, py);
      return last < 0 ? NOTHING_BELOW : columns.heightOf(last, px, py);
    }

    private void addCut(double s) {
      if (cutCount == cuts.length) {
        cuts = Arrays.copyOf(cuts, 2 * cutCount);
      }
      cuts[cutCount++] = s;
    }

    private void crossings() {
      Projection at = columns.at;
      Box box = new Box(columns);
      box.set(ax, ay, ax + dx, ay + dy);
      for (int iy = box.iy0; iy <= box.iy1; iy++) {
        for (int ix = box.ix0; ix <= box.ix1; ix++) {
          int c = iy * columns.nx + ix;
          for (int k = lists.start[c]; k < lists.start[c + 1]; k++) {
            int other = folds[lists.items[k]] >> 1;
            if (other == edge) {
              continue;
            }
            int v = table.ends[2 * other];
            int w = table.ends[2 * other + 1];
            double vx = at.x[v] - ax;
            double vy = at.y[v] - ay;
            double ex = at.x[w] - at.x[v];
            double ey = at.y[w] - at.y[v];
            double cross = dx * ey - dy * ex;
            if (cross == 0) {
              continue;
            }
            double s = (vx * ey - vy * ex) / cross;
            if (s <= 1e-9 || s >= 1 - 1e-9) {
              continue;
            }
            double r = (vx * dy - vy * dx) / cross;
            if (r >= -1e-9 && r <= 1 + 1e-9) {
              addCut(s);
            }
          }
        }
      }
    }

    private void keep(double s0, double s1, double foot0, double foot1, int seen0, int seen1) {
      if (count == edges.length) {
        edges = Arrays.copyOf(edges, 2 * count);
        seen = Arrays.copyOf(seen, 4 * count);
        pieces = Arrays.copyOf(pieces, 2 * STRIDE * count);
      }
      // Turned so that the outside lies on the left, from the first end to the second.
      int near = left ? 0 : 2;
      int far = 2 - near;
      int o = STRIDE * count;
      pieces[o + near] = ax + s0 * dx;
      pieces[o + near + 1] = ay + s0 * dy;
      pieces[o + far] = ax + s1 * dx;
      pieces[o + far + 1] = ay + s1 * dy;
      pieces[o + 4 + near / 2] = az + s0 * dz;
      pieces[o + 4 + far / 2] = az + s1 * dz;
      pieces[o + 6 + near / 2] = foot0;
      pieces[o + 6 + far / 2] = foot1;
      edges[count] = edge;
      seen[2 * count] = seen0;
      seen[2 * count + 1] = seen1;
      count++;
    }
  }
}
