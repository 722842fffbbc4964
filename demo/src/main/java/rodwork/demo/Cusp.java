package rodwork.demo;

/**
 * A cusp as a pyramid with four ridges: one down the triangular ridge to the middle of the tooth,
 * its opposite down the outside, two along the row of cusps.
 *
 * @param m place of the tip to mesial [mm]
 * @param f place of the tip to facial [mm]
 * @param height of the tip above the margin [mm]
 * @param inward fall along the triangular ridge [mm a mm]
 * @param along fall along the row [mm a mm]
 * @param turn how far the triangular ridge is turned from faciolingual, to mesial going inward
 *     [rad]
 */
record Cusp(double m, double f, double height, double inward, double along, double turn) {
  /** How far the flanks of the triangular ridge are hollowed [mm]. */
  private static final double FLANK_MM = 0.16;

  private static final double BLUNT_MM = 0.6;

  double at(double m, double f) {
    double dm = m - this.m;
    double df = f - this.f;
    double in = Math.signum(this.f) * df;
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    double u = in * c - dm * s;
    double v = dm * c + in * s;
    return height
        + BLUNT_MM * (inward + along) / 2
        - inward * Math.sqrt(u * u + BLUNT_MM * BLUNT_MM / 4)
        - along * Math.sqrt(v * v + BLUNT_MM * BLUNT_MM / 4)
        - FLANK_MM * (1 - Math.exp(-v * v / 0.7));
  }
}
