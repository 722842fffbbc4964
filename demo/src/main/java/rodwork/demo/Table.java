package rodwork.demo;

import java.util.List;
import rodwork.geometry.solid.Blend;

/**
 * The occlusal surface of a back tooth: cusps, two marginal ridges, fossae between them, and
 * fissures.
 *
 * @param cusps the cusps
 * @param ridges straight ridges
 * @param fissures straight pieces of groove
 * @param floor least height [mm]
 */
record Table(List<Cusp> cusps, List<Line> ridges, List<Line> fissures, double floor) {
  private static final double FISSURE_HALF_WIDTH_MM = 0.34;
  private static final double SEAM_MM = 0.4;

  /**
   * A straight piece of ridge or groove.
   *
   * @param size height of a ridge above the margin, depth of a groove [mm]
   * @param fall how steeply a ridge falls away [mm a mm]; a groove takes no note of it
   */
  record Line(double m0, double f0, double m1, double f1, double size, double fall) {
    double distance(double m, double f) {
      double dm = m1 - m0;
      double df = f1 - f0;
      double t = Math.clamp(((m - m0) * dm + (f - f0) * df) / (dm * dm + df * df), 0.0, 1.0);
      return Math.hypot(m - m0 - t * dm, f - f0 - t * df);
    }
  }

  double at(double m, double f) {
    double height = floor;
    for (Cusp cusp : cusps) {
      height = -Blend.union(-height, -cusp.at(m, f), SEAM_MM);
    }
    for (Line ridge : ridges) {
      double d = ridge.distance(m, f);
      double fall = ridge.size - ridge.fall * (Math.sqrt(d * d + 0.16) - 0.4);
      height = -Blend.union(-height, -fall, SEAM_MM);
    }
    for (Line fissure : fissures) {
      double d = fissure.distance(m, f) / FISSURE_HALF_WIDTH_MM;
      if (d < 3) {
        height -= fissure.size * Math.exp(-d * d);
      }
    }
    return height;
  }
}
