package rodwork.design.course;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.design.arm.Arm;
import rodwork.geometry.Vec3;

/**
 * The arms of one clasp on the scanned tooth.
 *
 * @param retentive from its rigid origin to its tip
 * @param opposing from rest or minor connector to its end; empty where the clasp has none
 * @param encirclementDeg how much of the crown its contacts go round: 360° less the widest gap
 * @param crossingDeg angle at which a bar crosses the gingival margin [degrees]
 * @param standsOnMark whether the tip lies on a mark of its gauge; else it stands where one would
 *     have to be made
 */
public record ClaspCourse(
    Arm retentive,
    List<Vec3> opposing,
    double encirclementDeg,
    OptionalDouble crossingDeg,
    boolean standsOnMark) {
  public ClaspCourse {
    opposing = List.copyOf(opposing);
  }

  /** A course, or why there is none. */
  public record Attempt(Optional<ClaspCourse> course, String why) {
    static Attempt of(ClaspCourse course) {
      return new Attempt(Optional.of(course), "");
    }

    static Attempt none(String why) {
      return new Attempt(Optional.empty(), why);
    }
  }

  /** Length of the opposing arm [mm]. */
  public double opposingMm() {
    double length = 0;
    for (int i = 1; i < opposing.size(); i++) {
      length += opposing.get(i).distance(opposing.get(i - 1));
    }
    return length;
  }
}
