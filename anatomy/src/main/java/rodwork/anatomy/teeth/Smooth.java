package rodwork.anatomy.teeth;

/** Gaussian smoothing of a row of numbers, its ends carried on. */
final class Smooth {
  private static final double REACH = 3.5;

  private Smooth() {}

  /**
   * The smoothed row.
   *
   * @param sigma in steps of the row
   * @param carried whether values beyond the ends are those of the ends; else 0
   */
  static double[] of(double[] row, double sigma, boolean carried) {
    int reach = (int) Math.ceil(REACH * sigma);
    double[] kernel = new double[reach + 1];
    double sum = 0;
    for (int k = 0; k <= reach; k++) {
      kernel[k] = Math.exp(-0.5 * k * k / (sigma * sigma));
      sum += k == 0 ? kernel[k] : 2 * kernel[k];
    }
    double[] out = new double[row.length];
    for (int i = 0; i < row.length; i++) {
      for (int k = -reach; k <= reach; k++) {
        int j = Math.max(0, Math.min(row.length - 1, i + k));
        out[i] += carried || j == i + k ? kernel[Math.abs(k)] * row[j] / sum : 0;
      }
    }
    return out;
  }

  /** The value at a place between steps; beyond the ends that of the end. */
  static double at(double[] row, double place) {
    int i = (int) Math.max(0, Math.min(row.length - 2, Math.floor(place)));
    double f = Math.max(0, Math.min(1, place - i));
    return row.length == 1 ? row[0] : row[i] * (1 - f) + row[i + 1] * f;
  }
}
