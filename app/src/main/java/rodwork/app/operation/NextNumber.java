package rodwork.app.operation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;

/**
 * The number that a tooth at a place most likely has, for a person to confirm: by its bearing from
 * the middle of the arch, between the teeth already known, or on an arch of usual form where none
 * are. Only numbers that are free.
 */
public final class NextNumber {
  /**
   * Widths from the midline back, a mean of upper and lower [mm] (common practice, from memory).
   */
  private static final double[] WIDTHS = {7, 6.5, 7.5, 7, 7, 10.5, 10, 9};

  /** An arch of usual form is near y = −k x² from the incisors back [1/mm]. */
  private static final double ROUND = 0.055;

  /** The middle of the frame lies so far behind the incisors on it [mm]. */
  private static final double BEHIND_MM = 22;

  private NextNumber() {}

  private record Known(double order, double bearing) {}

  /**
   * The likeliest free number.
   *
   * @param known the teeth found so far, if any
   * @param missing numbers that a person said are missing
   * @param point in the scan frame [mm]
   */
  public static ToothNumber at(
      ArchFrame frame, Jaw jaw, @Nullable Dentition known, Set<ToothNumber> missing, Vec3 point) {
    List<Known> there = new ArrayList<>();
    if (known != null) {
      for (Tooth tooth : known.inOrder()) {
        there.add(new Known(tooth.number().order(), bearing(frame, jaw, tooth.centroid())));
      }
    }
    double wanted = order(there, bearing(frame, jaw, point));
    return ToothNumber.allOf(jaw)
        .filter(number -> known == null || known.tooth(number).isEmpty())
        .filter(number -> !missing.contains(number))
        .min(Comparator.comparingDouble(number -> Math.abs(number.order() - wanted)))
        .orElse(ToothNumber.inOrder(jaw, Math.clamp(Math.round(wanted), 0, 15)));
  }

  /** Bearing from the middle of the arch, rising from the patient's right to left [radians]. */
  private static double bearing(ArchFrame frame, Jaw jaw, Vec3 point) {
    Vec3 q = frame.toArch(point.minus(frame.origin()));
    return Math.atan2(jaw == Jaw.UPPER ? q.x() : -q.x(), q.y());
  }

  private static double order(List<Known> known, double bearing) {
    List<Known> usual = usual();
    double plain = between(usual, bearing);
    if (known.isEmpty()) {
      return plain;
    }
    List<Known> sorted = known.stream().sorted(Comparator.comparingDouble(Known::bearing)).toList();
    Known first = sorted.getFirst();
    Known last = sorted.getLast();
    // Beyond the known teeth the usual arch tells how many more there are.
    if (bearing < first.bearing()) {
      return first.order() - Math.max(0.6, between(usual, first.bearing()) - plain);
    }
    if (bearing > last.bearing()) {
      return last.order() + Math.max(0.6, plain - between(usual, last.bearing()));
    }
    return between(sorted, bearing);
  }

  private static double between(List<Known> sorted, double bearing) {
    for (int i = 1; i < sorted.size(); i++) {
      Known a = sorted.get(i - 1);
      Known b = sorted.get(i);
      if (bearing <= b.bearing() || i == sorted.size() - 1) {
        double gap = b.bearing() - a.bearing();
        double share = gap > 0 ? (bearing - a.bearing()) / gap : 0;
        return a.order() + Math.clamp(share, 0, 1) * (b.order() - a.order());
      }
    }
    return sorted.getFirst().order();
  }

  private static List<Known> usual() {
    Known[] all = new Known[ToothNumber.PLACES];
    double x = 0;
    for (int place = 0; place < WIDTHS.length; place++) {
      double along = WIDTHS[place] / (place == 0 ? 2 : 1);
      double half = place == 0 ? along : (WIDTHS[place - 1] + WIDTHS[place]) / 2;
      // A step of that length along the parabola.
      x += half / Math.hypot(1, 2 * ROUND * x);
      double bearing = Math.atan2(x, BEHIND_MM - ROUND * x * x);
      all[8 + place] = new Known(8 + place, bearing);
      all[7 - place] = new Known(7 - place, -bearing);
    }
    return List.of(all);
  }
}
