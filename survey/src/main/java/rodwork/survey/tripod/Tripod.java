package rodwork.survey.tripod;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * Three points of a cast at one height along the path, by which the path is found again.
 *
 * @param axis the withdrawal axis [unit vector, scan frame]
 * @param heightMm their height along the axis, {@code point · axis} [mm]
 * @param marks the three marks
 */
public record Tripod(Vec3 axis, double heightMm, List<TripodMark> marks) {
  /** 95 % quantile of chi squared with two degrees of freedom: −2 ln 0.05. */
  private static final double CHI2_95 = 5.991464547107979;

  public Tripod {
    marks = List.copyOf(marks);
    if (marks.size() != 3) {
      throw new IllegalArgumentException("a tripod has three marks, not " + marks.size());
    }
  }

  /** Distances first–second, second–third, third–first [mm], as dividers measure them. */
  public double[] distancesMm() {
    return distances(marks.stream().map(TripodMark::point).toList());
  }

  static double[] distances(List<Vec3> p) {
    return new double[] {
      p.get(0).distance(p.get(1)), p.get(1).distance(p.get(2)), p.get(2).distance(p.get(0))
    };
  }

  /** By how much the two most alike distances differ [mm]. */
  public double leastDifferenceMm() {
    double[] d = distancesMm();
    return Math.min(Math.abs(d[0] - d[1]), Math.min(Math.abs(d[1] - d[2]), Math.abs(d[2] - d[0])));
  }

  /**
   * How far the axis may be off when each mark is set or picked with an error, 95 times in 100
   * [degrees].
   *
   * <p>An error e along the surface in the direction of its slope s lifts a mark by e·sin s; the
   * plane through three marks lifted by h₁, h₂, h₃ leans by Σ hᵢ∇λᵢ, λᵢ being the barycentric
   * coordinates of the triangle. With normal errors that lean is normal in two dimensions, and the
   * bound is √(χ²·λmax) of its covariance: exact where it spreads alike both ways, too wide else.
   *
   * @param pickingMm standard deviation of the error in each direction along the surface [mm]
   */
  public double axisErrorDeg(double pickingMm) {
    Vec3 a = marks.get(0).point();
    Vec3 b = marks.get(1).point();
    Vec3 c = marks.get(2).point();
    double twiceArea = b.minus(a).cross(c.minus(a)).length();
    if (!(twiceArea > 0)) {
      return 90;
    }
    Vec3 e1 = axis.anyPerpendicular();
    Vec3 e2 = axis.cross(e1);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < 3; i++) {
      // |∇λᵢ| is the opposite side over twice the area; turning by 90° changes no eigenvalue.
      Vec3 side = marks.get((i + 2) % 3).point().minus(marks.get((i + 1) % 3).point());
      double lift = pickingMm * Math.sin(Math.toRadians(marks.get(i).slopeDeg())) / twiceArea;
      double x = lift * side.dot(e1);
      double y = lift * side.dot(e2);
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
    double greatest = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
    return Math.toDegrees(Math.atan(Math.sqrt(CHI2_95 * greatest)));
  }
}
