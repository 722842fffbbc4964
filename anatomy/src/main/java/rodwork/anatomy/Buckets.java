package rodwork.anatomy;

/**
 * Points in cubic buckets, for questions about neighbours within one fixed distance. The answers
 * are exact: the buckets only save work, and do not depend on the pose.
 *
 * <p>Points in a plane are given with a third coordinate of 0.
 */
final class Buckets {
  private final double[] xyz;
  private final double reach;
  private final double[] low = new double[3];
  private final int[] cells = new int[3];
  private final int[] start;
  private final int[] members;

  private Buckets(double[] xyz, double reach) {
    this.xyz = xyz;
    this.reach = reach;
    int points = xyz.length / 3;
    double[] high = new double[3];
    for (int k = 0; k < 3; k++) {
      low[k] = Double.POSITIVE_INFINITY;
      high[k] = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < points; i++) {
        low[k] = Math.min(low[k], xyz[3 * i + k]);
        high[k] = Math.max(high[k], xyz[3 * i + k]);
      }
    }
    for (int k = 0; k < 3; k++) {
      double size = points == 0 ? 0 : (high[k] - low[k]) / reach;
      cells[k] = (int) Math.min(MAX_CELLS, Math.floor(size)) + 1;
    }
    start = new int[cells[0] * cells[1] * cells[2] + 1];
    for (int i = 0; i < points; i++) {
      start[cellOf(i) + 1]++;
    }
    for (int c = 1; c < start.length; c++) {
      start[c] += start[c - 1];
    }
    members = new int[points];
    int[] filled = start.clone();
    for (int i = 0; i < points; i++) {
      members[filled[cellOf(i)]++] = i;
    }
  }

  /** Bounds the memory where a cast is given in the wrong unit: the last bucket takes the rest. */
  private static final int MAX_CELLS = 200;

  /**
   * Sorts points into buckets; keeps the array.
   *
   * @param xyz coordinates [mm], stride 3
   * @param reach the distance that questions will be about [mm]
   */
  static Buckets of(double[] xyz, double reach) {
    return new Buckets(xyz, reach);
  }

  private int cell(int k, double value) {
    return (int) Math.max(0, Math.min(cells[k] - 1, Math.floor((value - low[k]) / reach)));
  }

  private int cellOf(int i) {
    return (cell(2, xyz[3 * i + 2]) * cells[1] + cell(1, xyz[3 * i + 1])) * cells[0]
        + cell(0, xyz[3 * i]);
  }

  /** Told each point within reach; returns false to stop. */
  interface Visitor {
    boolean visit(int point);
  }

  /** Visits the points within reach of a place until the visitor has enough. */
  void visit(double x, double y, double z, Visitor visitor) {
    for (int c = cell(2, z - reach); c <= cell(2, z + reach); c++) {
      for (int b = cell(1, y - reach); b <= cell(1, y + reach); b++) {
        int row = (c * cells[1] + b) * cells[0];
        int from = start[row + cell(0, x - reach)];
        int to = start[row + cell(0, x + reach) + 1];
        for (int m = from; m < to; m++) {
          int i = members[m];
          double dx = xyz[3 * i] - x;
          double dy = xyz[3 * i + 1] - y;
          double dz = xyz[3 * i + 2] - z;
          if (dx * dx + dy * dy + dz * dz <= reach * reach && !visitor.visit(i)) {
            return;
          }
        }
      }
    }
  }

  boolean anyWithin(double x, double y, double z) {
    boolean[] found = new boolean[1];
    visit(
        x,
        y,
        z,
        i -> {
          found[0] = true;
          return false;
        });
    return found[0];
  }

  int countWithin(double x, double y, double z) {
    int[] count = new int[1];
    visit(
        x,
        y,
        z,
        i -> {
          count[0]++;
          return true;
        });
    return count[0];
  }
}
