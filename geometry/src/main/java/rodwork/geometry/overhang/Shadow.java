package rodwork.geometry.overhang;

import java.util.Arrays;

/**
 * The shadow that everything above a level casts straight down, and the way out of it.
 *
 * <p>For a level L the shadow is the set of horizontal positions with something above L. Its
 * boundary is found where it can be: on {@linkplain Eaves pieces} with {@code foot <= L < top}, and
 * on the level lines of triangles that are seen from above. A search walks outwards over blocks of
 * columns and stops when nothing nearer can come; blocks and columns whose lowest open level lies
 * above L are passed over.
 *
 * <p>Immutable; one {@link Found} belongs to one thread.
 */
final class Shadow {
  private static final int BLOCK = 4;

  /** A foot nearer to the level than this is looked at on the surface itself [mm]. */
  private static final double FOOT_MARGIN_MM = 3 * Eaves.FOOT_ERROR_MM;

  /** Samples on a segment that is partly covered. */
  private static final int SAMPLES = 12;

  final Columns columns;
  final Eaves eaves;
  private final boolean[] visible;

  /** Lowest and highest level at which a column can hold a level line; empty: +∞ and −∞. */
  private final float[] lineLow;

  private final float[] lineHigh;

  /** Lowest level at which anything in a column, in a block, can bound the shadow. */
  private final float[] openLow;

  private final float[] blockLow;
  private final int bx;
  private final int by;

  /**
   * @param visible for each triangle, whether any of it may be seen from above; too many is slow,
   *     too few is wrong
   */
  Shadow(Columns columns, Eaves eaves, boolean[] visible) {
    this.columns = columns;
    this.eaves = eaves;
    this.visible = visible;
    int cells = columns.nx * columns.ny;
    lineLow = new float[cells];
    lineHigh = new float[cells];
    openLow = new float[cells];
    this.bx = (columns.nx + BLOCK - 1) / BLOCK;
    this.by = (columns.ny + BLOCK - 1) / BLOCK;
    blockLow = new float[bx * by];
    Arrays.fill(blockLow, Float.POSITIVE_INFINITY);
    for (int iy = 0; iy < columns.ny; iy++) {
      for (int ix = 0; ix < columns.nx; ix++) {
        int c = iy * columns.nx + ix;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = columns.start[c]; i < columns.start[c + 1]; i++) {
          int t = columns.items[i];
          if (visible[t]) {
            low = Math.min(low, columns.box[Columns.BOX * t + Columns.LOW]);
            high = Math.max(high, columns.box[Columns.BOX * t + Columns.HIGH]);
          }
        }
        lineLow[c] = (float) (low - 1e-4);
        lineHigh[c] = (float) (high + 1e-4);
        for (int k = eaves.start[c]; k < eaves.start[c + 1]; k++) {
          int o = Eaves.STRIDE * eaves.items[k];
          low = Math.min(low, Math.min(eaves.pieces[o + 6], eaves.pieces[o + 7]) - FOOT_MARGIN_MM);
        }
        openLow[c] = (float) (low - 1e-4);
        int b = iy / BLOCK * bx + ix / BLOCK;
        blockLow[b] = Math.min(blockLow[b], openLow[c]);
      }
    }
  }

  /** What a search found; reused from one search to the next. */
  static final class Found {
    double px;
    double py;
    double level;

    /** Square of the distance found so far [mm²]; the search radius before anything is found. */
    double best2;

    /** Nearest place on the boundary. */
    double qx;

    double qy;

    /** Piece that holds it, or −1. */
    int piece;

    /** Triangle whose level line holds it, or −1. */
    int triangle;

    private boolean doubtful;
    private double s0;
    private double s1;
    private final double[] line = new double[4];

    boolean any() {
      return piece >= 0 || triangle >= 0;
    }

    /** Height at which the surface bounds the shadow at (qx, qy) [mm]. */
    double top(Eaves eaves) {
      if (piece < 0) {
        return level;
      }
      int o = Eaves.STRIDE * piece;
      double[] p = eaves.pieces;
      double dx = p[o + 2] - p[o];
      double dy = p[o + 3] - p[o + 1];
      double l2 = dx * dx + dy * dy;
      double s = l2 > 0 ? ((qx - p[o]) * dx + (qy - p[o + 1]) * dy) / l2 : 0;
      return p[o + 4] + s * (p[o + 5] - p[o + 4]);
    }
  }

  /**
   * The point of the boundary of the shadow at a level that is nearest to a horizontal position.
   *
   * @param radius how far to look [mm]
   * @param hint a piece that was nearest for a point close by, or −1: only makes it faster
   */
  void nearest(double px, double py, double level, double radius, int hint, Found f) {
    f.px = px;
    f.py = py;
    f.level = level;
    f.best2 = radius * radius;
    f.piece = -1;
    f.triangle = -1;
    if (hint >= 0) {
      tryPiece(hint, f);
    }
    double size = BLOCK * columns.cell;
    double rx = (px - columns.x0) / size;
    double ry = (py - columns.y0) / size;
    int cx = (int) Math.floor(rx);
    int cy = (int) Math.floor(ry);
    double inner = size * Math.min(Math.min(rx - cx, cx + 1 - rx), Math.min(ry - cy, cy + 1 - ry));
    int rings = 1 + (int) (radius / size + 1);
    for (int k = 0; k <= rings; k++) {
      double least = k == 0 ? 0 : inner + (k - 1) * size;
      if (least * least >= f.best2) {
        return;
      }
      for (int iy = cy - k; iy <= cy + k; iy++) {
        if (iy < 0 || iy >= by) {
          continue;
        }
        int step = iy == cy - k || iy == cy + k || k == 0 ? 1 : 2 * k;
        for (int ix = cx - k; ix <= cx + k; ix += step) {
          if (ix >= 0 && ix < bx && blockLow[iy * bx + ix] <= level) {
            scanBlock(ix, iy, f);
          }
        }
      }
    }
  }

  private void scanBlock(int blockX, int blockY, Found f) {
    double size = columns.cell;
    int ix1 = Math.min(columns.nx, (blockX + 1) * BLOCK);
    int iy1 = Math.min(columns.ny, (blockY + 1) * BLOCK);
    for (int iy = blockY * BLOCK; iy < iy1; iy++) {
      double low = columns.y0 + iy * size;
      double gapY = f.py < low ? low - f.py : f.py > low + size ? f.py - low - size : 0;
      if (gapY * gapY >= f.best2) {
        continue;
      }
      for (int ix = blockX * BLOCK; ix < ix1; ix++) {
        int c = iy * columns.nx + ix;
        if (openLow[c] > f.level) {
          continue;
        }
        double left = columns.x0 + ix * size;
        double gapX = f.px < left ? left - f.px : f.px > left + size ? f.px - left - size : 0;
        if (gapX * gapX + gapY * gapY >= f.best2) {
          continue;
        }
        for (int k = eaves.start[c], end = eaves.start[c + 1]; k < end; k++) {
          tryPiece(eaves.items[k], f);
        }
        if (lineLow[c] <= f.level && f.level <= lineHigh[c]) {
          for (int i = columns.start[c], end = columns.start[c + 1]; i < end; i++) {
            int t = columns.items[i];
            if (visible[t] && straddles(t, f.level)) {
              tryLevelLine(t, f);
            }
          }
        }
      }
    }
  }

  private boolean straddles(int t, double level) {
    int o = Columns.BOX * t;
    return columns.box[o + Columns.LOW] <= level && level <= columns.box[o + Columns.HIGH];
  }

  private void tryPiece(int piece, Found f) {
    if (!open(piece, f)) {
      return;
    }
    int o = Eaves.STRIDE * piece;
    double[] p = eaves.pieces;
    double ax = p[o];
    double ay = p[o + 1];
    double dx = p[o + 2] - ax;
    double dy = p[o + 3] - ay;
    double l2 = dx * dx + dy * dy;
    double s = ((f.px - ax) * dx + (f.py - ay) * dy) / l2;
    s = s < f.s0 ? f.s0 : s > f.s1 ? f.s1 : s;
    double d2 = distance2(f, ax + s * dx, ay + s * dy);
    if (d2 >= f.best2) {
      return;
    }
    if (f.doubtful) {
      double out = Eaves.OUTSIDE_MM / Math.sqrt(l2);
      s = nearestUncovered(ax - dy * out, ay + dx * out, dx, dy, s, f.s0, f.s1, f.level);
      if (Double.isNaN(s)) {
        return;
      }
      d2 = distance2(f, ax + s * dx, ay + s * dy);
      if (d2 >= f.best2) {
        return;
      }
    }
    f.best2 = d2;
    f.qx = ax + s * dx;
    f.qy = ay + s * dy;
    f.piece = piece;
    f.triangle = -1;
  }

  private static double distance2(Found f, double qx, double qy) {
    return (qx - f.px) * (qx - f.px) + (qy - f.py) * (qy - f.py);
  }

  /**
   * Sets s0, s1 to the part of a piece whose top is above the level; false if the piece does not
   * bound the shadow there. Sets {@code doubtful} where the foot comes so near to the level that
   * only a look at the surface itself tells where.
   */
  private boolean open(int piece, Found f) {
    int o = Eaves.STRIDE * piece;
    double[] p = eaves.pieces;
    double t0 = p[o + 4] - f.level;
    double t1 = p[o + 5] - f.level;
    if (t0 <= 0 && t1 <= 0) {
      return false;
    }
    double b0 = f.level - p[o + 6];
    double b1 = f.level - p[o + 7];
    if (b0 < -FOOT_MARGIN_MM && b1 < -FOOT_MARGIN_MM) {
      return false;
    }
    f.doubtful = b0 < FOOT_MARGIN_MM || b1 < FOOT_MARGIN_MM;
    f.s0 = t0 <= 0 ? t0 / (t0 - t1) : 0;
    f.s1 = t1 <= 0 ? t0 / (t0 - t1) : 1;
    return true;
  }

  /**
   * The parameter between s0 and s1 nearest to a wanted one at which nothing lies above a short
   * level segment; NaN if all of it is covered. Ends of covered stretches are found by bisection
   * between samples, to 1e-6 of the segment.
   */
  private double nearestUncovered(
      double ax,
      double ay,
      double dx,
      double dy,
      double wanted,
      double s0,
      double s1,
      double level) {
    if (!columns.covered(ax + wanted * dx, ay + wanted * dy, level)) {
      return wanted;
    }
    double step = (s1 - s0) / SAMPLES;
    for (int i = 1; i <= SAMPLES; i++) {
      double best = Double.NaN;
      for (int side = -1; side <= 1; side += 2) {
        double last = wanted + side * (i - 1) * step;
        if (last < s0 || last > s1) {
          continue;
        }
        double s = Math.clamp(wanted + side * i * step, s0, s1);
        if (!columns.covered(ax + s * dx, ay + s * dy, level)) {
          double free = end(ax, ay, dx, dy, s, last, level);
          if (Double.isNaN(best) || Math.abs(free - wanted) < Math.abs(best - wanted)) {
            best = free;
          }
        }
      }
      if (!Double.isNaN(best)) {
        return best;
      }
    }
    return Double.NaN;
  }

  /** The end of the free stretch that holds {@code free}, towards a covered place. */
  private double end(
      double ax, double ay, double dx, double dy, double free, double covered, double level) {
    double in = free;
    double out = covered;
    while (Math.abs(in - out) > 1e-6) {
      double middle = (in + out) / 2;
      if (columns.covered(ax + middle * dx, ay + middle * dy, level)) {
        out = middle;
      } else {
        in = middle;
      }
    }
    return in;
  }

  /**
   * The level line of a triangle as ax, ay, bx, by in {@code f.line[0..3]}; false if it has none.
   */
  private boolean levelLine(int t, Found f) {
    int[] corners = columns.corners;
    Projection at = columns.at;
    int n = 0;
    for (int k = 0; k < 3 && n < 4; k++) {
      int v = corners[3 * t + k];
      int w = corners[3 * t + (k == 2 ? 0 : k + 1)];
      double hv = at.z[v] - f.level;
      double hw = at.z[w] - f.level;
      if (hv > 0 != hw > 0) {
        double s = hv / (hv - hw);
        f.line[n++] = at.x[v] + s * (at.x[w] - at.x[v]);
        f.line[n++] = at.y[v] + s * (at.y[w] - at.y[v]);
      }
    }
    return n == 4;
  }

  private void tryLevelLine(int t, Found f) {
    if (!levelLine(t, f)) {
      return;
    }
    double ax = f.line[0];
    double ay = f.line[1];
    double dx = f.line[2] - ax;
    double dy = f.line[3] - ay;
    double l2 = dx * dx + dy * dy;
    double s = l2 > 0 ? Columns.clamp(((f.px - ax) * dx + (f.py - ay) * dy) / l2) : 0;
    double d2 = distance2(f, ax + s * dx, ay + s * dy);
    if (d2 >= f.best2) {
      return;
    }
    int over = columns.cover(ax + s * dx, ay + s * dy, f.level);
    if (over >= 0) {
      s = openOf(ax, ay, dx, dy, s, over, f.level);
      if (Double.isNaN(s)) {
        return;
      }
      d2 = distance2(f, ax + s * dx, ay + s * dy);
      if (d2 >= f.best2) {
        return;
      }
    }
    f.best2 = d2;
    f.qx = ax + s * dx;
    f.qy = ay + s * dy;
    f.piece = -1;
    f.triangle = t;
  }

  /**
   * The open place of a level line that is covered where it is nearest; NaN if there is none to
   * look for.
   *
   * <p>An open end is followed back to where the cover begins: a valley may come out from under a
   * fold through an opening far narrower than the piece is sampled, and then only its own line
   * tells. With both ends covered an open stretch between them ends under folds on both sides and
   * is found on their pieces, unless what covers the line comes down through the level itself.
   */
  private double openOf(
      double ax, double ay, double dx, double dy, double wanted, int over, double level) {
    double best = Double.NaN;
    for (int side = 0; side <= 1; side++) {
      if (side != wanted && !columns.covered(ax + side * dx, ay + side * dy, level)) {
        double free = end(ax, ay, dx, dy, side, wanted, level);
        if (Double.isNaN(best) || Math.abs(free - wanted) < Math.abs(best - wanted)) {
          best = free;
        }
      }
    }
    double reach = 2 * Math.sqrt(dx * dx + dy * dy);
    if (Double.isNaN(best) && columns.box[Columns.BOX * over + Columns.LOW] <= level + reach) {
      best = nearestUncovered(ax, ay, dx, dy, wanted, 0, 1, level);
    }
    return best;
  }

  /** What a walk along a ray does in a column; returns the distance at which the walk may end. */
  @FunctionalInterface
  private interface Visit {
    double column(int c, double best);
  }

  /** Walks the columns along a horizontal ray, until it has come as far as the visits allow. */
  private double walk(double px, double py, double ux, double uy, double reach, Visit visit) {
    double best = reach;
    double size = columns.cell;
    int ix = (int) Math.floor((px - columns.x0) / size);
    int iy = (int) Math.floor((py - columns.y0) / size);
    double nextX = boundary(px, columns.x0, size, ix, ux);
    double nextY = boundary(py, columns.y0, size, iy, uy);
    double stepX = ux == 0 ? Double.POSITIVE_INFINITY : size / Math.abs(ux);
    double stepY = uy == 0 ? Double.POSITIVE_INFINITY : size / Math.abs(uy);
    double entered = 0;
    while (entered < best && ix >= 0 && iy >= 0 && ix < columns.nx && iy < columns.ny) {
      best = visit.column(iy * columns.nx + ix, best);
      if (nextX < nextY) {
        entered = nextX;
        nextX += stepX;
        ix += ux > 0 ? 1 : -1;
      } else {
        entered = nextY;
        nextY += stepY;
        iy += uy > 0 ? 1 : -1;
      }
    }
    return best;
  }

  /**
   * Distance along a horizontal ray to where it leaves the shadow at a level [mm].
   *
   * @param ux x of the unit direction
   * @param uy y of the unit direction
   * @param reach how far to look [mm]; returned when nothing is met before
   */
  double along(double px, double py, double level, double ux, double uy, double reach, Found f) {
    f.level = level;
    f.px = px;
    f.py = py;
    f.piece = -1;
    f.triangle = -1;
    double best =
        walk(
            px,
            py,
            ux,
            uy,
            reach,
            (c, limit) -> openLow[c] <= level ? alongColumn(c, ux, uy, limit, f) : limit);
    f.qx = px + best * ux;
    f.qy = py + best * uy;
    f.best2 = best * best;
    return best;
  }

  /**
   * Whether a horizontal ray passes through the surface between two distances.
   *
   * @param f whose level, px and py are those of the ray; nothing else of it is changed but scratch
   */
  boolean crosses(
      double px, double py, double level, double ux, double uy, double from, double to, Found f) {
    double end =
        walk(
            px,
            py,
            ux,
            uy,
            to,
            (c, limit) -> {
              for (int i = columns.start[c]; i < columns.start[c + 1]; i++) {
                int t = columns.items[i];
                if (straddles(t, level) && levelLine(t, f)) {
                  double d = meets(f, ux, uy, f.line[0], f.line[1], f.line[2], f.line[3], 0, 1);
                  if (d > from && d < to) {
                    return Double.NEGATIVE_INFINITY;
                  }
                }
              }
              return limit;
            });
    return end == Double.NEGATIVE_INFINITY;
  }

  private static double boundary(double p, double from, double size, int i, double u) {
    if (u == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double wall = from + size * (u > 0 ? i + 1 : i);
    return (wall - p) / u;
  }

  private double alongColumn(int c, double ux, double uy, double limit, Found f) {
    double best = limit;
    for (int k = eaves.start[c], end = eaves.start[c + 1]; k < end; k++) {
      int piece = eaves.items[k];
      if (!open(piece, f)) {
        continue;
      }
      int o = Eaves.STRIDE * piece;
      double[] p = eaves.pieces;
      double t = meets(f, ux, uy, p[o], p[o + 1], p[o + 2], p[o + 3], f.s0, f.s1);
      if (t < best && !(f.doubtful && shut(o, f, t, ux, uy))) {
        best = t;
        f.piece = piece;
        f.triangle = -1;
      }
    }
    if (lineLow[c] <= f.level && f.level <= lineHigh[c]) {
      for (int i = columns.start[c], end = columns.start[c + 1]; i < end; i++) {
        int tri = columns.items[i];
        if (visible[tri] && straddles(tri, f.level) && levelLine(tri, f)) {
          double t = meets(f, ux, uy, f.line[0], f.line[1], f.line[2], f.line[3], 0, 1);
          if (t < best && !columns.covered(f.px + t * ux, f.py + t * uy, f.level)) {
            best = t;
            f.piece = -1;
            f.triangle = tri;
          }
        }
      }
    }
    return best;
  }

  /** Whether something lies above the level just outside of a piece, where a ray meets it. */
  private boolean shut(int o, Found f, double t, double ux, double uy) {
    double dx = eaves.pieces[o + 2] - eaves.pieces[o];
    double dy = eaves.pieces[o + 3] - eaves.pieces[o + 1];
    double out = Eaves.OUTSIDE_MM / Math.sqrt(dx * dx + dy * dy);
    return columns.covered(f.px + t * ux - dy * out, f.py + t * uy + dx * out, f.level);
  }

  /** Distance along the ray to a segment's stretch s0..s1; +∞ where they do not meet. */
  private static double meets(
      Found f,
      double ux,
      double uy,
      double ax,
      double ay,
      double bx,
      double by,
      double s0,
      double s1) {
    double dx = bx - ax;
    double dy = by - ay;
    double cross = ux * dy - uy * dx;
    if (cross == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double wx = ax - f.px;
    double wy = ay - f.py;
    double s = (wx * uy - wy * ux) / cross;
    if (s < s0 - 1e-9 || s > s1 + 1e-9) {
      return Double.POSITIVE_INFINITY;
    }
    double t = (wx * dy - wy * dx) / cross;
    return t >= -1e-9 ? Math.max(0, t) : Double.POSITIVE_INFINITY;
  }
}
