package rodwork.survey.tripod;

import java.util.List;
import java.util.Locale;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.registration.MatchedPoints;
import rodwork.geometry.registration.RigidMotion;

/**
 * A path found again from three points picked on another scan of the same cast.
 *
 * @param axis the withdrawal axis in the other scan's frame [unit vector]
 * @param boundDeg how far it may be off, 95 times in 100, for the picking error of the rules
 *     [degrees]
 * @param disagreementMm by how much the worst distance is off [mm]
 * @param motion from the first scan's frame to the other's, as well as three points tell
 */
public record Recovery(Vec3 axis, double boundDeg, double disagreementMm, RigidMotion motion) {
  private static final int[][] ORDERS = {
    {0, 1, 2}, {1, 2, 0}, {2, 0, 1}, {0, 2, 1}, {2, 1, 0}, {1, 0, 2}
  };

  /**
   * Finds the path again.
   *
   * <p>The points may come in any order: the distances pair them. The axis is the normal of their
   * plane, on the side from which the three marks run the same way round as on the first scan. A
   * mirrored scan cannot be told from three points.
   *
   * @param kept the marks as they were kept
   * @param picked three points in the other scan's frame [mm]
   * @throws Refusal if the distances disagree or pair in two ways
   */
  public static Recovery of(Tripod kept, List<Vec3> picked, TripodRules rules) {
    if (picked.size() != 3) {
      throw TripodProblem.THREE_POINTS.with(picked.size());
    }
    double[] want = kept.distancesMm();
    double best = Double.POSITIVE_INFINITY;
    double second = Double.POSITIVE_INFINITY;
    List<Vec3> paired = picked;
    for (int[] order : ORDERS) {
      List<Vec3> p = List.of(picked.get(order[0]), picked.get(order[1]), picked.get(order[2]));
      double worst = worst(want, Tripod.distances(p));
      if (worst < best) {
        second = best;
        best = worst;
        paired = p;
      } else {
        second = Math.min(second, worst);
      }
    }
    double limit = rules.disagree().value();
    if (!(best <= limit)) {
      throw TripodProblem.DISTANCES.with(best, text(Tripod.distances(paired)), text(want), limit);
    }
    if (second <= limit) {
      throw TripodProblem.AMBIGUOUS.with(best, second, limit);
    }
    Vec3 normal = normal(paired);
    List<Vec3> marks = kept.marks().stream().map(TripodMark::point).toList();
    Vec3 axis = normal(marks).dot(kept.axis()) < 0 ? normal.times(-1) : normal;
    return new Recovery(
        axis, kept.axisErrorDeg(rules.picking().value()), best, MatchedPoints.fit(marks, paired));
  }

  private static Vec3 normal(List<Vec3> p) {
    return p.get(1).minus(p.get(0)).cross(p.get(2).minus(p.get(0))).unit();
  }

  private static double worst(double[] a, double[] b) {
    double worst = 0;
    for (int i = 0; i < 3; i++) {
      worst = Math.max(worst, Math.abs(a[i] - b[i]));
    }
    return worst;
  }

  private static String text(double[] d) {
    return String.format(Locale.ROOT, "%.2f, %.2f, %.2f mm", d[0], d[1], d[2]);
  }
}
