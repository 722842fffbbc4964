package rodwork.anatomy;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * The standard error of a direction from the directions found with one part of the data left out
 * each (Efron and Tibshirani, An Introduction to the Bootstrap, 1993, chapter 11).
 */
final class Jackknife {
  private Jackknife() {}

  /** Standard error about the worse of the two axes across the direction [degrees]. */
  static double degrees(List<Vec3> leftOut) {
    int n = leftOut.size();
    if (n < 3) {
      return 90;
    }
    Vec3 mean = Vec3.ZERO;
    for (Vec3 d : leftOut) {
      mean = mean.plus(d);
    }
    mean = mean.unit();
    Vec3 u = mean.anyPerpendicular();
    Vec3 v = mean.cross(u);
    double uu = 0;
    double uv = 0;
    double vv = 0;
    for (Vec3 d : leftOut) {
      double a = Math.atan2(d.dot(u), d.dot(mean));
      double b = Math.atan2(d.dot(v), d.dot(mean));
      uu += a * a;
      uv += a * b;
      vv += b * b;
    }
    double largest = (uu + vv) / 2 + Math.hypot((uu - vv) / 2, uv);
    return Math.toDegrees(Math.sqrt((n - 1.0) / n * largest));
  }
}
