package rodwork.demo;

/**
 * A smooth curve through given points, kept as a table for quick reading.
 *
 * <p>Monotone between neighbouring points (Fritsch and Carlson, SIAM J Numer Anal 1980;17:238–46),
 * so that a greatest value given at a point stays the greatest; level outside the first and last
 * point.
 */
final class Curve {
  private static final double STEP = 0.05;

  private final double start;
  private final float[] table;

  private Curve(double start, float[] table) {
    this.start = start;
    this.table = table;
  }

  /** The curve through (p[0], p[1]), (p[2], p[3]), ...; the first of each pair must grow. */
  static Curve through(double... p) {
    int n = p.length / 2;
    double[] slope = new double[n];
    for (int i = 1; i + 1 < n; i++) {
      double h0 = p[2 * i] - p[2 * i - 2];
      double h1 = p[2 * i + 2] - p[2 * i];
      if (!(h0 > 0) || !(h1 > 0)) {
        throw new IllegalArgumentException("points of a curve must go on growing");
      }
      double d0 = (p[2 * i + 1] - p[2 * i - 1]) / h0;
      double d1 = (p[2 * i + 3] - p[2 * i + 1]) / h1;
      slope[i] = d0 * d1 <= 0 ? 0 : 3 * (h0 + h1) / ((2 * h1 + h0) / d0 + (h1 + 2 * h0) / d1);
    }
    if (n > 1) {
      slope[0] = (p[3] - p[1]) / (p[2] - p[0]);
      slope[n - 1] = (p[2 * n - 1] - p[2 * n - 3]) / (p[2 * n - 2] - p[2 * n - 4]);
    }
    double start = p[0];
    float[] table = new float[(int) Math.ceil((p[2 * n - 2] - start) / STEP) + 2];
    int i = 0;
    for (int k = 0; k < table.length; k++) {
      double x = Math.min(start + k * STEP, p[2 * n - 2]);
      while (i + 2 < n && x > p[2 * i + 2]) {
        i++;
      }
      double h = n > 1 ? p[2 * i + 2] - p[2 * i] : 1;
      double t = (x - p[2 * i]) / h;
      table[k] =
          n == 1
              ? (float) p[1]
              : (float)
                  (p[2 * i + 1] * (1 + 2 * t) * (1 - t) * (1 - t)
                      + slope[i] * h * t * (1 - t) * (1 - t)
                      + p[2 * i + 3] * t * t * (3 - 2 * t)
                      - slope[i + 1] * h * t * t * (1 - t));
    }
    return new Curve(start, table);
  }

  double at(double x) {
    double place = (x - start) / STEP;
    if (!(place > 0)) {
      return table[0];
    }
    if (place >= table.length - 1) {
      return table[table.length - 1];
    }
    int i = (int) place;
    double t = place - i;
    return table[i] + t * (table[i + 1] - table[i]);
  }
}
