package rodwork.anatomy;

import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;

/**
 * The symmetric curve that follows an arch in the occlusal plane: with t across the arch and s to
 * the front, {@code s = apex + bend·t² + wide·t⁴}, in a frame turned by an angle and shifted along
 * t. Its axis of symmetry gives the front.
 *
 * <p>The quartic form is common in studies of arch shape, see for instance Pepe, J Dent Res 1975
 * (named from memory); nothing but the axis is used of it.
 *
 * @param angle of the front in the plane, from the first axis of the points [rad]
 * @param middle of the curve along t [mm]
 * @param apex height of its foremost point along s [mm]
 * @param bend second-order coefficient [1/mm]
 * @param wide fourth-order coefficient [1/mm³]
 */
record ArchCurve(double angle, double middle, double apex, double bend, double wide) {
  private static final int STARTS = 36;
  private static final int ROUNDS = 40;

  /** Distances beyond this lose their say (Cauchy's weight) [mm]. */
  private static final double SCALE_MM = 2.5;

  /** Points in the plane with weights. */
  record Points(double[] u, double[] v, double[] weight) {
    int size() {
      return u.length;
    }
  }

  Vec3 front(Vec3 u, Vec3 v) {
    return u.times(Math.cos(angle)).plus(v.times(Math.sin(angle)));
  }

  double across(double u, double v) {
    return u * Math.sin(angle) - v * Math.cos(angle) - middle;
  }

  double along(double u, double v) {
    return u * Math.cos(angle) + v * Math.sin(angle);
  }

  double height(double t) {
    return apex + bend * t * t + wide * t * t * t * t;
  }

  double slope(double t) {
    return 2 * bend * t + 4 * wide * t * t * t;
  }

  /** First-order distance of a point of the plane from the curve [mm], positive in front of it. */
  double distance(double u, double v) {
    double t = across(u, v);
    double slope = slope(t);
    return (along(u, v) - height(t)) / Math.sqrt(1 + slope * slope);
  }

  /** The best curve over all directions, open to the back; null where none opens. */
  static @Nullable ArchCurve through(Points points) {
    ArchCurve best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < STARTS; k++) {
      ArchCurve start = parabola(points, 2 * Math.PI * k / STARTS);
      if (start != null && start.cost(points) < least) {
        best = start;
        least = start.cost(points);
      }
    }
    return best == null ? null : best.refined(points);
  }

  private static @Nullable ArchCurve parabola(Points points, double angle) {
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    double[] row = {1, 0, 0};
    double[] q = {0, 0, 0};
    for (int round = 0; round < 5; round++) {
      NormalEquations equations = new NormalEquations(3);
      for (int i = 0; i < points.size(); i++) {
        double t = points.u[i] * sin - points.v[i] * cos;
        double s = points.u[i] * cos + points.v[i] * sin;
        double slope = q[1] + 2 * q[2] * t;
        double steep = 1 + slope * slope;
        double r2 = (s - q[0] - q[1] * t - q[2] * t * t);
        r2 = r2 * r2 / steep / (SCALE_MM * SCALE_MM);
        double w = points.weight[i];
        row[1] = t;
        row[2] = t * t;
        equations.add(row, s, round == 0 ? w : w / (1 + r2) / (1 + r2) / steep);
      }
      q = equations.solve();
      if (q.length == 0) {
        return null;
      }
    }
    if (!(q[2] < 0)) {
      return null;
    }
    double middle = -q[1] / (2 * q[2]);
    return new ArchCurve(angle, middle, q[0] + q[1] * middle / 2, q[2], 0);
  }

  /** Levenberg's and Marquardt's descent from this curve over all five unknowns. */
  ArchCurve refined(Points points) {
    return refined(points, ROUNDS);
  }

  ArchCurve refined(Points points, int rounds) {
    ArchCurve curve = this;
    double cost = cost(points);
    double damping = 1e-3;
    double[] row = new double[5];
    for (int round = 0; round < rounds; round++) {
      NormalEquations equations = new NormalEquations(5);
      double cos = Math.cos(curve.angle);
      double sin = Math.sin(curve.angle);
      for (int i = 0; i < points.size(); i++) {
        double t = points.u[i] * sin - points.v[i] * cos - curve.middle;
        double s = points.u[i] * cos + points.v[i] * sin;
        double slope = curve.slope(t);
        double steep = Math.sqrt(1 + slope * slope);
        double r = (s - curve.height(t)) / steep;
        double w = points.weight[i] / (1 + r * r / (SCALE_MM * SCALE_MM));
        // d along/d angle = −(t + middle), d across/d angle = along; the slope changes as well.
        double lean = r * slope / steep;
        double bent = 2 * curve.bend + 12 * curve.wide * t * t;
        row[0] = (-(t + curve.middle) - slope * s - lean * bent * s) / steep * ANGLE_UNIT;
        row[1] = (slope + lean * bent) / steep;
        row[2] = -1 / steep;
        row[3] = (-t * t - lean * 2 * t) / steep * BEND_UNIT;
        row[4] = (-t * t * t * t - lean * 4 * t * t * t) / steep * WIDE_UNIT;
        equations.add(row, -r, w);
      }
      for (int k = 0; k < 5; k++) {
        equations.damp(k, damping * equations.diagonal(k) + 1e-12);
      }
      double[] step = equations.solve();
      if (step.length == 0) {
        break;
      }
      ArchCurve next =
          new ArchCurve(
              curve.angle + step[0] * ANGLE_UNIT,
              curve.middle + step[1],
              curve.apex + step[2],
              curve.bend + step[3] * BEND_UNIT,
              curve.wide + step[4] * WIDE_UNIT);
      double nextCost = next.cost(points);
      if (nextCost < cost) {
        boolean done = cost - nextCost < 1e-11 * cost;
        curve = next;
        cost = nextCost;
        damping = Math.max(1e-9, damping / 5);
        if (done) {
          break;
        }
      } else {
        damping *= 6;
        if (damping > 1e8) {
          break;
        }
      }
    }
    return curve;
  }

  /** Units in which the unknowns are of like size: the steps and the damping refer to them. */
  private static final double ANGLE_UNIT = 0.05;

  private static final double BEND_UNIT = 1e-2;
  private static final double WIDE_UNIT = 1e-5;

  /** What the fit makes small: Cauchy's measure of the distances. */
  double cost(Points points) {
    double sum = 0;
    double total = 0;
    for (int i = 0; i < points.size(); i++) {
      double r = distance(points.u[i], points.v[i]) / SCALE_MM;
      total += points.weight[i] * Math.log1p(r * r);
      sum += points.weight[i];
    }
    return total / sum;
  }

  /** Distance of the points from the curve, weighted root mean square [mm]. */
  double rmsMm(Points points) {
    double sum = 0;
    double total = 0;
    for (int i = 0; i < points.size(); i++) {
      double r = distance(points.u[i], points.v[i]);
      total += points.weight[i] * r * r;
      sum += points.weight[i];
    }
    return Math.sqrt(total / sum);
  }
}
