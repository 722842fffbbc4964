package rodwork.geometry.solid;

/**
 * Joins of field values with a rounded seam.
 *
 * <p>The seam is the quadratic one: two values that differ by {@code reach} or more are joined
 * sharply, closer ones bulge by at most {@code reach / 4}. So {@code union(a, b, k) ≤ min(a, b)}
 * and {@code union(a, b, k) ≥ min(a, b) − k/4}; with {@code k = 0} they are equal.
 */
public final class Blend {
  private Blend() {}

  /**
   * The union of two bodies, with a fillet along the seam.
   *
   * @param reach size of the fillet [mm, 0 or more]
   */
  public static double union(double a, double b, double reach) {
    double near = reach - Math.abs(a - b);
    double least = Math.min(a, b);
    return near > 0 ? least - near * near / (4 * reach) : least;
  }

  /**
   * What two bodies share, with a rounded edge along the seam.
   *
   * @param reach size of the rounding [mm, 0 or more]
   */
  public static double intersection(double a, double b, double reach) {
    return -union(-a, -b, reach);
  }

  /** 0 below {@code from}, 1 above {@code to}, and a smooth cubic step between. */
  public static double step(double from, double to, double value) {
    double t = Math.clamp((value - from) / (to - from), 0.0, 1.0);
    return t * t * (3 - 2 * t);
  }
}
