package rodwork.demo;

import rodwork.geometry.solid.Blend;

/**
 * The palate as a height over the plane of the cast: a vault, rugae in front, the incisive papilla
 * and the raphe on the midline.
 *
 * @param rimZ height where the vault meets the ridge [mm]
 * @param depth from the rim to the deepest place [mm]
 * @param halfWidth of the vault at its back [mm]
 * @param backY where it is widest and deepest [mm]
 * @param frontY where the vault meets the ridge behind the incisors [mm]
 */
record Palate(double rimZ, double depth, double halfWidth, double backY, double frontY)
    implements InnerSurface {
  /** The necks of the incisors stand this far inside the ellipse of the vault [mm]. */
  private static final double BEHIND_FRONT_MM = 7;

  @Override
  public double height(double x, double y) {
    double u = x / halfWidth;
    double v = y > backY ? (y - backY) / (frontY - backY) : 0.3 * (y - backY) / (frontY - backY);
    double q = 1 - u * u - v * v;
    double in = (q + Math.sqrt(q * q + 0.01)) / 2;
    double vault = in * (1.32 - 0.32 * in);
    double z = rimZ - depth * vault;
    return z + rugae(x, y, q) + papilla(x, y) + raphe(x, q);
  }

  private double rugae(double x, double y, double q) {
    double ax = Math.abs(x);
    double back = frontY - BEHIND_FRONT_MM - y;
    if (back < 2 || back > 24 || ax > 15) {
      return 0;
    }
    double phase = x > 0 ? 0.5 : 0;
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      double start = 3.8 + 3.3 * i + phase * (i % 2 == 0 ? 1 : -0.6);
      double line = start + 0.16 * ax + 0.5 * Math.sin(0.75 * ax + 1.3 * i + phase * 3);
      double d = (back - line) / 0.75;
      double reach = 11.5 - 1.3 * i + phase;
      double along = Blend.step(0.6, 2.2, ax) * (1 - Blend.step(0.55 * reach, reach, ax));
      sum += 0.8 * Math.exp(-d * d) * along;
    }
    return sum * Blend.step(0.02, 0.15, q);
  }

  private double papilla(double x, double y) {
    double u = x / 1.7;
    double v = (y - frontY + BEHIND_FRONT_MM + 2.6) / 2.4;
    double r = u * u + v * v;
    return r < 6 ? 1.4 * Math.exp(-r) : 0;
  }

  private double raphe(double x, double q) {
    double u = x / 0.9;
    return 0.3 * Math.exp(-u * u) * Blend.step(0.1, 0.4, q);
  }
}
