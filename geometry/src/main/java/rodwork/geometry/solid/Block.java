package rodwork.geometry.solid;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A cube of the lattice, 8 fine cells a side, with the field's values at its lattice points.
 *
 * <p>A fine block has 8 cells a side, a coarse one 2. Lattice points are counted in fine cells from
 * the block's lowest corner, so that a coarse block knows every fourth point. Mutable while {@link
 * IsoSurface} works; each block is written by one thread at a time.
 */
final class Block {
  /** Fine cells a side. */
  static final int SIDE = 8;

  static final int COARSE_STRIDE = 4;
  private static final int REFINEMENTS = 4;

  final int bx;
  final int by;
  final int bz;
  final int stride;
  final Field field;

  /** The blocks round this one, at (ox + 1) + 3 (oy + 1) + 9 (oz + 1); null where nothing is. */
  final @Nullable Block[] around = new @Nullable Block[27];

  /** Bit per neighbour, as in {@link #around}: set where a crossed edge lies on its border. */
  int reaches;

  /** First vertex of each cell, or −1. */
  final int[] firstVertex;

  /** Crossed edges that this block reports: axis, and lattice point of the lower end. */
  int[] edges = new int[0];

  /** For each of them: where it is crossed [3], outward unit normal [3]. */
  double[] crossings = new double[0];

  private final double[] values;
  private final int cells;
  private final double cellMm;

  Block(int bx, int by, int bz, boolean fine, Field whole, double cellMm) {
    this.bx = bx;
    this.by = by;
    this.bz = bz;
    this.cellMm = cellMm;
    stride = fine ? 1 : COARSE_STRIDE;
    cells = SIDE / stride;
    field =
        whole.within(
            Box.about(
                new rodwork.geometry.Vec3(x(SIDE / 2.0), y(SIDE / 2.0), z(SIDE / 2.0)),
                (SIDE / 2.0 + 0.5) * cellMm));
    values = new double[(cells + 1) * (cells + 1) * (cells + 1)];
    firstVertex = new int[cells * cells * cells];
    Arrays.fill(firstVertex, -1);
  }

  boolean fine() {
    return stride == 1;
  }

  double x(double i) {
    return (bx * SIDE + i) * cellMm;
  }

  double y(double j) {
    return (by * SIDE + j) * cellMm;
  }

  double z(double k) {
    return (bz * SIDE + k) * cellMm;
  }

  /** Asks the field at every lattice point and finds which neighbours the surface enters. */
  void sample() {
    int at = 0;
    for (int k = 0; k <= SIDE; k += stride) {
      for (int j = 0; j <= SIDE; j += stride) {
        for (int i = 0; i <= SIDE; i += stride) {
          values[at++] = field.at(x(i), y(j), z(k));
        }
      }
    }
    forEachCrossedEdge(
        (axis, p, q, r) -> {
          int[] c = {p, q, r};
          int u = (axis + 1) % 3;
          int w = (axis + 2) % 3;
          int ou = offset(c[u]);
          int ow = offset(c[w]);
          reaches |= bit(u, ou, w, 0) | bit(u, 0, w, ow) | bit(u, ou, w, ow);
        });
  }

  private static int offset(int position) {
    return position == 0 ? -1 : position == SIDE ? 1 : 0;
  }

  private static int bit(int u, int ou, int w, int ow) {
    int[] o = new int[3];
    o[u] = ou;
    o[w] = ow;
    return 1 << aroundIndex(o[0], o[1], o[2]);
  }

  static int aroundIndex(int ox, int oy, int oz) {
    return (ox + 1) + 3 * (oy + 1) + 9 * (oz + 1);
  }

  /** The value at a lattice point of this block; coarse blocks know every fourth point. */
  double value(int i, int j, int k) {
    int n = cells + 1;
    return values[(k / stride * n + j / stride) * n + i / stride];
  }

  boolean inside(int i, int j, int k) {
    return value(i, j, k) < 0;
  }

  int cell(int i, int j, int k) {
    return (k / stride * cells + j / stride) * cells + i / stride;
  }

  /** Bit per corner of a cell, as in {@link CellCases}: set where it is inside. */
  int pattern(int i, int j, int k) {
    int pattern = 0;
    for (int corner = 0; corner < 8; corner++) {
      int di = (corner & 1) * stride;
      int dj = (corner >> 1 & 1) * stride;
      int dk = (corner >> 2 & 1) * stride;
      if (inside(i + di, j + dj, k + dk)) {
        pattern |= 1 << corner;
      }
    }
    return pattern;
  }

  /** Finds the crossings on the edges that fall to this block. */
  void cross() {
    int[] count = new int[1];
    int[][] found = {new int[1024]};
    forEachCrossedEdge(
        (axis, i, j, k) -> {
          if (fallsHere(axis, i, j, k)) {
            if (4 * count[0] == found[0].length) {
              found[0] = Arrays.copyOf(found[0], 2 * found[0].length);
            }
            int at = 4 * count[0]++;
            found[0][at] = axis;
            found[0][at + 1] = i;
            found[0][at + 2] = j;
            found[0][at + 3] = k;
          }
        });
    edges = Arrays.copyOf(found[0], 4 * count[0]);
    crossings = new double[6 * count[0]];
    for (int e = 0; e < count[0]; e++) {
      crossEdge(edges[4 * e], edges[4 * e + 1], edges[4 * e + 2], edges[4 * e + 3], 6 * e);
    }
  }

  /**
   * Whether this block reports an edge: the first fine block at it, or the first of all where none
   * is fine (then the edge is a coarse one).
   */
  private boolean fallsHere(int axis, int i, int j, int k) {
    int[] c = {i, j, k};
    int u = (axis + 1) % 3;
    int w = (axis + 2) % 3;
    int ou = offset(c[u]);
    int ow = offset(c[w]);
    return (ou == 0 || yields(u, ou, w, 0, ou < 0))
        && (ow == 0 || yields(u, 0, w, ow, ow < 0))
        && (ou == 0 || ow == 0 || yields(u, ou, w, ow, ou < 0 || (ou == 0 && ow < 0)));
  }

  /** Whether the neighbour leaves the edge to this block. */
  private boolean yields(int u, int ou, int w, int ow, boolean earlier) {
    int[] o = new int[3];
    o[u] = ou;
    o[w] = ow;
    Block other = around[aroundIndex(o[0], o[1], o[2])];
    if (other == null) {
      return true;
    }
    if (fine()) {
      return !other.fine() || !earlier;
    }
    return !other.fine() && !earlier;
  }

  private void crossEdge(int axis, int i, int j, int k, int at) {
    double[] low = {x(i), y(j), z(k)};
    double start = low[axis];
    double a = 0;
    double b = stride * cellMm;
    double fa = value(i, j, k);
    double fb =
        value(
            i + (axis == 0 ? stride : 0),
            j + (axis == 1 ? stride : 0),
            k + (axis == 2 ? stride : 0));
    // False position; an end that stays put twice is given half its weight (the Illinois rule).
    double t = (b * fa - a * fb) / (fa - fb);
    int stuck = 0;
    for (int step = 0; step < REFINEMENTS; step++) {
      low[axis] = start + t;
      double f = field.at(low[0], low[1], low[2]);
      if (Math.abs(f) < 1e-4) {
        break;
      }
      if (f < 0 == fa < 0) {
        a = t;
        fa = f;
        fb = stuck == 1 ? fb / 2 : fb;
        stuck = 1;
      } else {
        b = t;
        fb = f;
        fa = stuck == 2 ? fa / 2 : fa;
        stuck = 2;
      }
      t = (b * fa - a * fb) / (fa - fb);
    }
    low[axis] = start + t;
    double eps = 0.01 * cellMm;
    double gx = field.at(low[0] + eps, low[1], low[2]) - field.at(low[0] - eps, low[1], low[2]);
    double gy = field.at(low[0], low[1] + eps, low[2]) - field.at(low[0], low[1] - eps, low[2]);
    double gz = field.at(low[0], low[1], low[2] + eps) - field.at(low[0], low[1], low[2] - eps);
    double length = Math.sqrt(gx * gx + gy * gy + gz * gz);
    if (!(length > 0)) {
      length = 1;
    }
    crossings[at] = low[0];
    crossings[at + 1] = low[1];
    crossings[at + 2] = low[2];
    crossings[at + 3] = gx / length;
    crossings[at + 4] = gy / length;
    crossings[at + 5] = gz / length;
  }

  /** Visitor of a lattice edge: its axis and the lattice point of its lower end. */
  private interface EdgeVisitor {
    void edge(int axis, int i, int j, int k);
  }

  private void forEachCrossedEdge(EdgeVisitor visitor) {
    for (int k = 0; k <= SIDE; k += stride) {
      for (int j = 0; j <= SIDE; j += stride) {
        for (int i = 0; i <= SIDE; i += stride) {
          boolean here = inside(i, j, k);
          if (i < SIDE && inside(i + stride, j, k) != here) {
            visitor.edge(0, i, j, k);
          }
          if (j < SIDE && inside(i, j + stride, k) != here) {
            visitor.edge(1, i, j, k);
          }
          if (k < SIDE && inside(i, j, k + stride) != here) {
            visitor.edge(2, i, j, k);
          }
        }
      }
    }
  }
}
