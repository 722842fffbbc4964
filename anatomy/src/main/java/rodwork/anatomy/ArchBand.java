package rodwork.anatomy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;

/**
 * The part of an arch close under its occlusal plane, seen from above: crowns without palate, gum
 * and ridges, and the curve they follow.
 */
final class ArchBand {
  /** How far below the occlusal plane the band reaches, and above it [mm]. */
  private static final double BELOW_MM = 3;

  private static final double ABOVE_MM = 3.5;

  /** Into how many stretches the arch is cut for its uncertainty; about a tooth each. */
  static final int STRETCHES = 14;

  /** Points count by the room they fill within this distance, not by how finely it was scanned. */
  private static final double DENSITY_MM = 2.5;

  private static final int LIMIT = 1_000;
  private static final int LEAST_POINTS = 30;

  /** What an arch is like; crowns are about 10 mm wide, which alone gives an rms of 3 mm. */
  private static final double MOST_RMS_MM = 4.0;

  private static final double LEAST_WIDTH_MM = 25;
  private static final double MOST_WIDTH_MM = 110;
  private static final double LEAST_TURN_DEG = 60;
  private static final double LEAST_SIDE_DEG = 15;
  private static final double LEAST_TOPS = 6;

  private final OcclusalPlane plane;
  private final Vec3 u;
  private final Vec3 v;
  private final ArchCurve.Points points;
  private final @Nullable ArchCurve curve;
  private final double[] sortedAcross;

  private ArchBand(OcclusalPlane plane, Vec3 u, Vec3 v, ArchCurve.Points points) {
    this.plane = plane;
    this.u = u;
    this.v = v;
    this.points = points;
    ArchCurve found = points.size() < LEAST_POINTS ? null : ArchCurve.through(points);
    this.curve = found;
    double[] across = new double[found == null ? 0 : points.size()];
    for (int i = 0; found != null && i < across.length; i++) {
      across[i] = found.across(points.u()[i], points.v()[i]);
    }
    Arrays.sort(across);
    this.sortedAcross = across;
  }

  static ArchBand below(OcclusalPlane plane, PointCloud cloud) {
    Vec3 u = plane.up().anyPerpendicular();
    Vec3 v = plane.up().cross(u);
    int[] inBand = new int[cloud.size()];
    int count = 0;
    for (int i = 0; i < cloud.size(); i++) {
      double h = cloud.along(i, plane.up()) - plane.point().dot(plane.up());
      if (h > -BELOW_MM && h < ABOVE_MM) {
        inBand[count++] = i;
      }
    }
    int stride = Math.max(1, (count + LIMIT - 1) / LIMIT);
    int n = (count + stride - 1) / stride;
    double[] flat = new double[3 * n];
    double[] us = new double[n];
    double[] vs = new double[n];
    for (int i = 0; i < n; i++) {
      us[i] = cloud.along(inBand[i * stride], u) - plane.point().dot(u);
      vs[i] = cloud.along(inBand[i * stride], v) - plane.point().dot(v);
      flat[3 * i] = us[i];
      flat[3 * i + 1] = vs[i];
    }
    Buckets near = Buckets.of(flat, DENSITY_MM);
    double[] weight = new double[n];
    for (int i = 0; i < n; i++) {
      weight[i] = 1.0 / near.countWithin(us[i], vs[i], 0);
    }
    return new ArchBand(plane, u, v, new ArchCurve.Points(us, vs, weight));
  }

  @Nullable ArchCurve curve() {
    return curve;
  }

  private ArchCurve sureCurve() {
    if (curve == null) {
      throw new IllegalStateException("no curve; ask doubt() first");
    }
    return curve;
  }

  Vec3 front() {
    return sureCurve().front(u, v);
  }

  /** Near the middle of the arch, on the occlusal plane; where there is no curve, amid the tops. */
  Vec3 middle() {
    if (curve == null) {
      return plane.point();
    }
    double[] along = new double[points.size()];
    for (int i = 0; i < along.length; i++) {
      along[i] = curve.along(points.u()[i], points.v()[i]);
    }
    Arrays.sort(along);
    double back = along[(int) (0.02 * (along.length - 1))];
    double front = along[(int) (0.98 * (along.length - 1))];
    Vec3 lateral = u.times(Math.sin(curve.angle())).minus(v.times(Math.cos(curve.angle())));
    return plane
        .point()
        .plus(lateral.times(curve.middle()))
        .plus(front().times((back + front) / 2));
  }

  /** Why this is no arch, or null where it is one. */
  @Nullable String doubt() {
    if (plane.support() < LEAST_TOPS) {
      return String.format(
          Locale.ROOT,
          "only %.0f cusps and edges lie in one plane, an arch has at least %.0f",
          plane.support(),
          LEAST_TOPS);
    }
    if (curve == null) {
      return "the crowns follow no curve that is open to the back";
    }
    double low = sortedAcross[(int) (0.02 * (sortedAcross.length - 1))];
    double high = sortedAcross[(int) (0.98 * (sortedAcross.length - 1))];
    double width = high - low;
    if (width < LEAST_WIDTH_MM || width > MOST_WIDTH_MM) {
      return String.format(
          Locale.ROOT,
          "it is %.1f mm wide, an arch is %.0f to %.0f mm",
          width,
          LEAST_WIDTH_MM,
          MOST_WIDTH_MM);
    }
    double rms = curve.rmsMm(points);
    if (rms > MOST_RMS_MM) {
      return String.format(
          Locale.ROOT,
          "its high parts lie %.1f mm (rms) off the best horseshoe curve, those of an arch within"
              + " %.1f mm",
          rms,
          MOST_RMS_MM);
    }
    double right = Math.toDegrees(Math.atan(curve.slope(low)));
    double left = -Math.toDegrees(Math.atan(curve.slope(high)));
    if (right + left < LEAST_TURN_DEG || Math.min(right, left) < LEAST_SIDE_DEG) {
      return String.format(
          Locale.ROOT,
          "its high parts turn by %.0f° and %.0f° on the two sides; an arch turns by %.0f° each and"
              + " %.0f° in all",
          right,
          left,
          LEAST_SIDE_DEG,
          LEAST_TURN_DEG);
    }
    return null;
  }

  /** The stretch of the arch that a point belongs to [0 to {@link #STRETCHES} − 1]. */
  int stretch(Vec3 x) {
    Vec3 d = x.minus(plane.point());
    return stretch(d.dot(u), d.dot(v));
  }

  /**
   * By the direction in which a place is seen from the middle of the arch, a little further back.
   */
  private int stretch(double a, double b) {
    Vec3 from = middle().minus(plane.point());
    double along = sureCurve().along(a, b) - sureCurve().along(from.dot(u), from.dot(v));
    double angle = Math.atan2(sureCurve().across(a, b), along);
    int k = (int) ((angle / Math.PI + 1) / 2 * STRETCHES);
    return Math.max(0, Math.min(STRETCHES - 1, k));
  }

  /** Twice the jackknife error of the front, and how much it hangs on the form of the curve. */
  double frontUncertaintyDeg(double floorDeg) {
    int[] stretch = new int[points.size()];
    for (int i = 0; i < stretch.length; i++) {
      stretch[i] = stretch(points.u()[i], points.v()[i]);
    }
    List<Vec3> fronts = new ArrayList<>();
    for (int s = 0; s < STRETCHES; s++) {
      double[] weight = points.weight().clone();
      boolean any = false;
      for (int i = 0; i < stretch.length; i++) {
        if (stretch[i] == s) {
          weight[i] = 0;
          any = true;
        }
      }
      if (any) {
        ArchCurve without =
            sureCurve().refined(new ArchCurve.Points(points.u(), points.v(), weight), 3);
        fronts.add(without.front(u, v));
      }
    }
    return Math.hypot(floorDeg, 2 * Jackknife.degrees(fronts));
  }
}
