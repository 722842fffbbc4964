package rodwork.anatomy.occlusion;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;

/**
 * The occlusal plane over the cusp tips and incisal edges of chosen teeth, and the arch frame on
 * it.
 *
 * <p>Least squares with Tukey's biweight whose scale shrinks (Beaton and Tukey, Technometrics 16,
 * 1974), each tooth counting once whatever the number of its cusps; then plain least squares over
 * what lies within {@link #OUTLIER_MM}. The uncertainty is the standard error when whole teeth are
 * left out one at a time (jackknife), times Student's t for 95 in 100.
 *
 * @param frame the frame with the plane's normal as its occlusal direction; its front keeps its
 *     uncertainty
 * @param anteriorDeg how well the plane is known against tilting forward and back [± degrees]
 * @param rightDeg the same to the sides
 * @param tips all cusp tips and edges looked at
 * @param rmsMm how far those used lie from the plane, root mean square [mm]
 */
public record TeethPlane(
    ArchFrame frame, double anteriorDeg, double rightDeg, List<Tip> tips, double rmsMm) {
  /** A tip farther from the plane is out of line [mm]. */
  public static final double OUTLIER_MM = 1.5;

  /** Beyond this a person is asked to set the plane [± degrees]. */
  public static final double ASK_DEG = 3;

  private static final double[] SCALES_MM = {9, 7, 6, 5, 4, 3, 2.5, 2.5};
  private static final int LEAST_TEETH = 3;

  /** No plane is known better than the incisal edge can be told from a scan [± degrees]. */
  private static final double LEAST_DEG = 0.3;

  /** How far a person's pick lies from the place meant [mm]; common practice. */
  private static final double PICKING_MM = 0.3;

  /** Three points whose triangle is lower than this tell no plane [mm]. */
  private static final double LEAST_HEIGHT_MM = 10;

  /**
   * A cusp tip or incisal edge.
   *
   * @param tooth that it belongs to
   * @param at scan frame [mm]
   * @param overMm how far it lies over the plane [mm]
   * @param used whether the plane rests on it
   */
  public record Tip(ToothNumber tooth, Vec3 at, double overMm, boolean used) {}

  public TeethPlane {
    tips = List.copyOf(tips);
  }

  /** Whether a person should set the plane, because it is not known well enough. */
  public boolean ask() {
    return Math.max(anteriorDeg, rightDeg) > ASK_DEG;
  }

  /**
   * The plane over some teeth.
   *
   * @param frame a frame that is about right: it says which way is up and which is front
   * @throws rodwork.geometry.Refusal {@link OcclusionProblem#TOO_FEW_TIPS}
   */
  public static TeethPlane over(ArchFrame frame, Collection<Tooth> chosen) {
    Vec3 up = frame.z();
    Vec3 front = frame.y();
    Vec3 point = frame.origin();
    List<Weighed> tips = tips(chosen, up);
    point = point.plus(up.times(median(tips, point, up)));
    for (double scale : SCALES_MM) {
      tips = tips(chosen, up);
      weigh(tips, point, up, scale);
      Fit fit = Fit.of(tips, point, up, front, null);
      if (fit == null) {
        break;
      }
      point = fit.point;
      up = fit.up;
      front = front.across(up).unit();
    }
    Fit last = null;
    for (int round = 0; round < 4; round++) {
      tips = tips(chosen, up);
      keep(tips, point, up);
      Fit fit = Fit.of(tips, point, up, front, null);
      if (fit == null) {
        break;
      }
      last = fit;
      point = fit.point;
      up = fit.up;
      front = front.across(up).unit();
    }
    List<ToothNumber> teeth =
        tips.stream().filter(t -> t.weight > 0).map(t -> t.tooth).distinct().toList();
    if (last == null || teeth.size() < LEAST_TEETH) {
      throw OcclusionProblem.TOO_FEW_TIPS.with(teeth.size(), OUTLIER_MM, LEAST_TEETH);
    }
    double[] error = jackknife(tips, teeth, point, up, front);
    List<Tip> told = new ArrayList<>();
    double squares = 0;
    double sum = 0;
    for (Weighed tip : tips) {
      double over = tip.at.minus(point).dot(up);
      told.add(new Tip(tip.tooth, tip.at, over, tip.weight > 0));
      squares += tip.weight * over * over;
      sum += tip.weight;
    }
    ArchFrame fixed =
        new ArchFrame(
            point,
            front,
            up,
            frame.jaw(),
            Math.max(error[0], error[1]),
            frame.frontUncertaintyDeg());
    return new TeethPlane(fixed, error[0], error[1], told, Math.sqrt(squares / sum));
  }

  /**
   * The plane through three points that a person picked.
   *
   * @throws rodwork.geometry.Refusal {@link OcclusionProblem#POINTS_IN_LINE}
   */
  public static TeethPlane through(ArchFrame frame, Vec3 a, Vec3 b, Vec3 c) {
    Vec3 normal = b.minus(a).cross(c.minus(a));
    double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
    double height = longest > 0 ? normal.length() / longest : 0;
    if (!(height >= LEAST_HEIGHT_MM)) {
      throw OcclusionProblem.POINTS_IN_LINE.with(height, LEAST_HEIGHT_MM);
    }
    Vec3 up = normal.dot(frame.z()) < 0 ? normal.unit().times(-1) : normal.unit();
    Vec3 front = frame.y().across(up).unit();
    Vec3 right = front.cross(up);
    double error = 2 * Math.toDegrees(Math.atan(PICKING_MM / height));
    // Seen along an axis the reach of the points across it is the lever.
    double anterior = 2 * Math.toDegrees(Math.atan(PICKING_MM / reach(front, a, b, c)));
    double lateral = 2 * Math.toDegrees(Math.atan(PICKING_MM / reach(right, a, b, c)));
    ArchFrame fixed =
        new ArchFrame(
            a.plus(b).plus(c).times(1 / 3.0),
            front,
            up,
            frame.jaw(),
            Math.max(LEAST_DEG, error),
            frame.frontUncertaintyDeg());
    return new TeethPlane(
        fixed, Math.max(LEAST_DEG, anterior), Math.max(LEAST_DEG, lateral), List.of(), 0);
  }

  private static double reach(Vec3 direction, Vec3 a, Vec3 b, Vec3 c) {
    double x = a.dot(direction);
    double y = b.dot(direction);
    double z = c.dot(direction);
    return Math.max(x, Math.max(y, z)) - Math.min(x, Math.min(y, z));
  }

  /** A tip with its say; changed while a plane is sought, never seen outside. */
  private static final class Weighed {
    private final ToothNumber tooth;
    private final Vec3 at;
    private final double share;
    private double weight;

    Weighed(ToothNumber tooth, Vec3 at, double share) {
      this.tooth = tooth;
      this.at = at;
      this.share = share;
      this.weight = share;
    }
  }

  private static List<Weighed> tips(Collection<Tooth> chosen, Vec3 up) {
    List<Weighed> tips = new ArrayList<>();
    for (Tooth tooth : chosen) {
      List<Vec3> found = tooth.cuspTips(up);
      found.forEach(p -> tips.add(new Weighed(tooth.number(), p, 1.0 / found.size())));
    }
    return tips;
  }

  private static double median(List<Weighed> tips, Vec3 point, Vec3 up) {
    double[] heights = tips.stream().mapToDouble(t -> t.at.minus(point).dot(up)).sorted().toArray();
    return heights.length == 0 ? 0 : heights[heights.length / 2];
  }

  private static void weigh(List<Weighed> tips, Vec3 point, Vec3 up, double scale) {
    for (Weighed tip : tips) {
      double x = tip.at.minus(point).dot(up) / scale;
      double s = 1 - x * x;
      tip.weight = s > 0 ? tip.share * s * s : 0;
    }
  }

  private static void keep(List<Weighed> tips, Vec3 point, Vec3 up) {
    for (Weighed tip : tips) {
      tip.weight = Math.abs(tip.at.minus(point).dot(up)) <= OUTLIER_MM ? tip.share : 0;
    }
  }

  /** Two-sided Student's t for 95 in 100 with 1, 2, ... degrees of freedom (standard table). */
  private static final double[] T95 = {
    12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23, 2.20, 2.18, 2.16
  };

  /** What the slopes to the front and to the side keep within, 95 times in 100 [± degrees]. */
  private static double[] jackknife(
      List<Weighed> tips, List<ToothNumber> teeth, Vec3 point, Vec3 up, Vec3 front) {
    List<double[]> slopes = new ArrayList<>();
    for (ToothNumber without : teeth) {
      Fit fit = Fit.of(tips, point, up, front, without);
      if (fit == null) {
        return new double[] {90, 90};
      }
      slopes.add(new double[] {fit.toFront, fit.toSide});
    }
    double[] error = new double[2];
    int n = slopes.size();
    for (int k = 0; k < 2; k++) {
      int axis = k;
      double mean = slopes.stream().mapToDouble(s -> s[axis]).average().orElse(0);
      double squares = slopes.stream().mapToDouble(s -> (s[axis] - mean) * (s[axis] - mean)).sum();
      double standard = Math.sqrt((n - 1.0) / n * squares);
      double t = T95[Math.clamp(n - 4, 0, T95.length - 1)]; // a plane takes three
      error[k] = Math.max(LEAST_DEG, Math.toDegrees(Math.atan(t * standard)));
    }
    return error;
  }

  /** A weighted least-squares plane: its point and normal, and its slopes in the frame given. */
  private record Fit(Vec3 point, Vec3 up, double toFront, double toSide) {

    /** The plane without one tooth, or with all; null where the tips tell none. */
    static @Nullable Fit of(
        List<Weighed> tips, Vec3 origin, Vec3 up, Vec3 front, @Nullable ToothNumber without) {
      Vec3 side = front.cross(up);
      double w = 0;
      double f = 0;
      double s = 0;
      double h = 0;
      for (Weighed tip : tips) {
        if (!tip.tooth.equals(without)) {
          Vec3 d = tip.at.minus(origin);
          w += tip.weight;
          f += tip.weight * d.dot(front);
          s += tip.weight * d.dot(side);
          h += tip.weight * d.dot(up);
        }
      }
      if (!(w > 1)) {
        return null;
      }
      double ff = 0;
      double fs = 0;
      double ss = 0;
      double fh = 0;
      double sh = 0;
      for (Weighed tip : tips) {
        if (!tip.tooth.equals(without)) {
          Vec3 d = tip.at.minus(origin);
          double x = d.dot(front) - f / w;
          double y = d.dot(side) - s / w;
          double z = d.dot(up) - h / w;
          ff += tip.weight * x * x;
          fs += tip.weight * x * y;
          ss += tip.weight * y * y;
          fh += tip.weight * x * z;
          sh += tip.weight * y * z;
        }
      }
      double det = ff * ss - fs * fs;
      if (!(det > 1e-3 * Math.max(ff, ss) * Math.max(ff, ss))) {
        return null; // the tips lie in one line
      }
      double a = (fh * ss - sh * fs) / det;
      double b = (sh * ff - fh * fs) / det;
      Vec3 middle = origin.plus(front.times(f / w)).plus(side.times(s / w)).plus(up.times(h / w));
      Vec3 normal = up.minus(front.times(a)).minus(side.times(b)).unit();
      return new Fit(middle, normal, a, b);
    }
  }
}
