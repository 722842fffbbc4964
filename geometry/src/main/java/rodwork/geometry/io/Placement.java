package rodwork.geometry.io;

/**
 * An affine map of space, {@code x' = a·x + b·y + c·z + d} and so on, by which files place an
 * object; immutable.
 */
final class Placement {
  /** Leaves every point as it is, bit by bit. */
  static final Placement NONE =
      new Placement(new double[] {1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0}, false);

  /** The numbers a, b, c, d of x', then those of y', then those of z'. */
  private final double[] m;

  private final boolean moves;

  private Placement(double[] m, boolean moves) {
    this.m = m;
    this.moves = moves;
  }

  /** From four columns of three: images of x, y, z, and of the origin, one behind another. */
  static Placement ofColumns(double[] c) {
    double[] rows = {c[0], c[3], c[6], c[9], c[1], c[4], c[7], c[10], c[2], c[5], c[8], c[11]};
    return new Placement(rows, true);
  }

  /** From a shift, a turn given as unit quaternion (x, y, z, w), and a stretch along the axes. */
  static Placement of(double[] shift, double[] turn, double[] stretch) {
    double x = turn[0];
    double y = turn[1];
    double z = turn[2];
    double w = turn[3];
    double[] columns = {
      (1 - 2 * (y * y + z * z)) * stretch[0],
      2 * (x * y + w * z) * stretch[0],
      2 * (x * z - w * y) * stretch[0],
      2 * (x * y - w * z) * stretch[1],
      (1 - 2 * (x * x + z * z)) * stretch[1],
      2 * (y * z + w * x) * stretch[1],
      2 * (x * z + w * y) * stretch[2],
      2 * (y * z - w * x) * stretch[2],
      (1 - 2 * (x * x + y * y)) * stretch[2],
      shift[0],
      shift[1],
      shift[2]
    };
    return ofColumns(columns);
  }

  /** First the inner map, then this one. */
  Placement after(Placement inner) {
    if (!moves || !inner.moves) {
      return moves ? this : inner;
    }
    double[] r = new double[12];
    for (int row = 0; row < 12; row += 4) {
      for (int column = 0; column < 4; column++) {
        r[row + column] =
            m[row] * inner.m[column]
                + m[row + 1] * inner.m[4 + column]
                + m[row + 2] * inner.m[8 + column]
                + (column == 3 ? m[row + 3] : 0);
      }
    }
    return new Placement(r, true);
  }

  /** Whether it mirrors, so that the winding of triangles must be turned round. */
  boolean mirrors() {
    return m[0] * (m[5] * m[10] - m[6] * m[9])
            - m[1] * (m[4] * m[10] - m[6] * m[8])
            + m[2] * (m[4] * m[9] - m[5] * m[8])
        < 0;
  }

  /** Adds the image of a point to a list of coordinates. */
  void place(double x, double y, double z, Doubles out) {
    if (!moves) {
      out.add(x, y, z); // computed, 0·NaN would spread into the other coordinates
      return;
    }
    out.add(
        m[0] * x + m[1] * y + m[2] * z + m[3],
        m[4] * x + m[5] * y + m[6] * z + m[7],
        m[8] * x + m[9] * y + m[10] * z + m[11]);
  }
}
