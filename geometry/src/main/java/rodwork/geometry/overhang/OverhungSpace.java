package rodwork.geometry.overhang;

import java.util.Arrays;
import java.util.function.IntPredicate;
import rodwork.geometry.Parallel;
import rodwork.geometry.Watch;

/**
 * The space outside a body with the body above it.
 *
 * <p>Sampled on upright lines through the middles of the columns: along each, the stretches from a
 * surface that looks down to the next surface below are added up. Where nothing lies below (an open
 * shell), a stretch ends at the lowest point of the connected overhang it belongs to. The error is
 * that of sampling lines at one column's width.
 */
final class OverhungSpace {
  private static final int ROWS = 8;

  private final CasterMesh mesh;
  private final Columns columns;
  private final IntPredicate counted;
  private final double[] border;

  /**
   * @param counted which triangles (numbered as in the mesh given to the caster) may be the roof
   * @param border for each vertex here, the lowest height of its connected overhang [mm]
   */
  OverhungSpace(CasterMesh mesh, Columns columns, IntPredicate counted, double[] border) {
    this.mesh = mesh;
    this.columns = columns;
    this.counted = counted;
    this.border = border;
  }

  double volumeMm3(Watch watch) {
    double[] rows = new double[columns.ny];
    Parallel.chunks(
        columns.ny,
        ROWS,
        watch,
        (from, to) -> {
          Line line = new Line();
          for (int iy = from; iy < to; iy++) {
            double sum = 0;
            for (int ix = 0; ix < columns.nx; ix++) {
              sum += line.gaps(ix, iy);
            }
            rows[iy] = sum;
          }
        });
    return Arrays.stream(rows).sum() * columns.cell * columns.cell;
  }

  /** One upright line: the surfaces it meets, from the top down. */
  private final class Line {
    private double[] heights = new double[16];
    private int[] triangles = new int[16];
    private int count;

    double gaps(int ix, int iy) {
      int c = iy * columns.nx + ix;
      double px = columns.x0 + (ix + 0.5) * columns.cell;
      double py = columns.y0 + (iy + 0.5) * columns.cell;
      count = 0;
      for (int i = columns.start[c]; i < columns.start[c + 1]; i++) {
        int t = columns.items[i];
        double h = columns.heightOf(t, px, py);
        if (h != Double.NEGATIVE_INFINITY) {
          insert(h, t);
        }
      }
      double sum = 0;
      for (int i = 0; i < count; i++) {
        int t = triangles[i];
        if (!looksDown(t) || !counted.test(mesh.triangleOf[t])) {
          continue;
        }
        double floor = i + 1 < count ? heights[i + 1] : lowest(t);
        sum += Math.max(0, heights[i] - floor);
      }
      return sum;
    }

    private void insert(double h, int t) {
      if (count == heights.length) {
        heights = Arrays.copyOf(heights, 2 * count);
        triangles = Arrays.copyOf(triangles, 2 * count);
      }
      int i = count++;
      while (i > 0 && heights[i - 1] < h) {
        heights[i] = heights[i - 1];
        triangles[i] = triangles[i - 1];
        i--;
      }
      heights[i] = h;
      triangles[i] = t;
    }
  }

  private boolean looksDown(int t) {
    Projection at = columns.at;
    int a = mesh.corners[3 * t];
    int b = mesh.corners[3 * t + 1];
    int c = mesh.corners[3 * t + 2];
    return (at.x[b] - at.x[a]) * (at.y[c] - at.y[a]) - (at.y[b] - at.y[a]) * (at.x[c] - at.x[a])
        < 0;
  }

  private double lowest(int t) {
    double low = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      low = Math.min(low, border[mesh.corners[3 * t + k]]);
    }
    return low;
  }

  /** For each vertex, the lowest height of the connected overhang it belongs to; +∞ where free. */
  static double[] borders(CasterMesh mesh, Projection at, float[] depth) {
    int n = at.z.length;
    int[] parent = new int[n];
    double[] low = new double[n];
    for (int v = 0; v < n; v++) {
      boolean under = depth[mesh.vertexOf[v]] > 0;
      parent[v] = under ? v : -1;
      low[v] = under ? at.z[v] : Double.POSITIVE_INFINITY;
    }
    for (int e = 0; e < mesh.count; e++) {
      int a = mesh.ends[2 * e];
      int b = mesh.ends[2 * e + 1];
      if (parent[a] >= 0 && parent[b] >= 0) {
        int ra = root(parent, a);
        int rb = root(parent, b);
        parent[Math.max(ra, rb)] = Math.min(ra, rb);
        double both = Math.min(low[ra], low[rb]);
        low[ra] = both;
        low[rb] = both;
      }
    }
    double[] border = new double[n];
    for (int v = 0; v < n; v++) {
      border[v] = parent[v] < 0 ? Double.POSITIVE_INFINITY : low[root(parent, v)];
    }
    return border;
  }

  private static int root(int[] parent, int v) {
    int r = v;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }
}
