package rodwork.demo;

import rodwork.geometry.Vec3;

/**
 * The line that the middles of the crowns stand on: a catenary, seen from occlusal.
 *
 * <p>With arc length s from the midline (positive to +X) and parameter a: {@code x = a·asinh(s/a)},
 * {@code y = a − sqrt(a² + s²)}. A place is given by s and its distance t from the line, positive
 * outwards (to facial).
 */
final class ArchCurve {
  private static final int GRID_HALF = 48;
  private static final int GRID_BACK = 84;
  private static final int GRID_FRONT = 24;

  private static final int LINE = 110;

  private final double a;

  /** Arc length of the nearest place of the line, 1 mm grid, for x of 0 or more. */
  private final float[] start = new float[(GRID_HALF + 1) * (GRID_BACK + GRID_FRONT + 1)];

  ArchCurve(double a) {
    this.a = a;
    double[] line = new double[2 * LINE];
    for (int k = 0; k < LINE; k++) {
      line[2 * k] = x(k);
      line[2 * k + 1] = y(k);
    }
    for (int j = 0; j <= GRID_BACK + GRID_FRONT; j++) {
      for (int i = 0; i <= GRID_HALF; i++) {
        double y = j - GRID_BACK;
        double best = Double.MAX_VALUE;
        double s = 0;
        for (int k = 0; k < LINE; k++) {
          double dx = line[2 * k] - i;
          double dy = line[2 * k + 1] - y;
          double d = dx * dx + dy * dy;
          if (d < best) {
            best = d;
            s = k;
          }
        }
        for (int step = 0; step < 4; step++) {
          s = improve(s, i, y);
        }
        start[j * (GRID_HALF + 1) + i] = (float) s;
      }
    }
  }

  double x(double s) {
    double q = Math.abs(s) / a;
    return Math.copySign(a * Math.log(q + Math.sqrt(q * q + 1)), s);
  }

  double y(double s) {
    return a - Math.sqrt(a * a + s * s);
  }

  /** The point at (s, t), at height z. */
  Vec3 point(double s, double t, double z) {
    Vec3 n = outward(s);
    return new Vec3(x(s) + t * n.x(), y(s) + t * n.y(), z);
  }

  /** Unit vector along the line, to growing s. */
  Vec3 along(double s) {
    double w = Math.sqrt(a * a + s * s);
    return new Vec3(a / w, -s / w, 0);
  }

  /** Unit vector across the line, outwards. */
  Vec3 outward(double s) {
    double w = Math.sqrt(a * a + s * s);
    return new Vec3(s / w, a / w, 0);
  }

  /** The arc length of the place of the line that is nearest to a point. */
  double nearest(double x, double y) {
    double gx = Math.min(Math.abs(x), GRID_HALF - 0.001);
    double gy = Math.clamp(y + GRID_BACK, 0.0, GRID_BACK + GRID_FRONT - 0.001);
    int i = (int) gx;
    int j = (int) gy;
    double u = gx - i;
    double w = gy - j;
    int at = j * (GRID_HALF + 1) + i;
    int above = at + GRID_HALF + 1;
    double guess =
        (1 - w) * ((1 - u) * start[at] + u * start[at + 1])
            + w * ((1 - u) * start[above] + u * start[above + 1]);
    return Math.copySign(improve(guess, Math.abs(x), y), x);
  }

  /** One Newton step towards the place whose normal runs through the point. */
  private double improve(double s, double x, double y) {
    double w2 = a * a + s * s;
    double w = Math.sqrt(w2);
    double q = s / a;
    double dx = x - a * Math.log(q + Math.sqrt(q * q + 1));
    double dy = y - a + w;
    double gap = (dx * a - dy * s) / w;
    double t = (dx * s + dy * a) / w;
    return s + Math.clamp(gap / Math.max(0.25, 1 + t * a / w2), -2.0, 2.0);
  }

  /** Distance from the line at arc length {@code s}, positive outwards [mm]. */
  double across(double s, double x, double y) {
    double w = Math.sqrt(a * a + s * s);
    return ((x - x(s)) * s + (y - y(s)) * a) / w;
  }
}
