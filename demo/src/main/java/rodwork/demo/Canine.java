package rodwork.demo;

import static rodwork.demo.Crown.ROOT_MM;

/**
 * A canine: one cusp, a facial ridge, a cingulum and a lingual ridge between two shallow fossae.
 */
final class Canine extends Crown {
  private static final double EDGE_HALF_MM = 0.75;

  private final double tip;
  private final double ridge;

  private Canine(CrownSize s, double bulge, double ridge) {
    super(
        s,
        side(s, 0.68, 0.62),
        side(s, 0.55, 0.55),
        Curve.through(
            -ROOT_MM,
            0.36 * s.blNeck(),
            0,
            s.bl() / 2 - bulge,
            0.2 * s.length(),
            s.bl() / 2,
            0.6 * s.length(),
            0.32 * s.bl() + 0.2,
            s.length(),
            EDGE_HALF_MM),
        Curve.through(
            -ROOT_MM,
            0.36 * s.blNeck(),
            0,
            s.blNeck() - s.bl() / 2 + bulge,
            0.18 * s.length(),
            s.bl() / 2,
            0.36 * s.length(),
            0.42 * s.bl(),
            0.65 * s.length(),
            0.2 * s.bl() + 0.2,
            s.length(),
            EDGE_HALF_MM),
        0.3,
        0.55);
    this.tip = 0.06 * s.md();
    this.ridge = ridge;
  }

  /**
   * A canine.
   *
   * @param bulge how far the facial height of contour stands out beyond the margin [mm]
   */
  static Canine of(CrownSize size, double bulge) {
    return new Canine(size, bulge, 0.3);
  }

  @Override
  double top(double m, double f) {
    double away = m - tip;
    double run = Math.sqrt(away * away + 0.5) - 0.7;
    return size.length() - (away > 0 ? 0.5 : 0.58) * run;
  }

  @Override
  double relief(double m, double f, double z) {
    double along = z / size.length();
    double middle = Math.exp(-3 * (along - 0.6) * (along - 0.6) / 0.1);
    double across = m / (0.22 * size.md());
    return ridge * middle * (Math.exp(-across * across) - 0.35);
  }
}
