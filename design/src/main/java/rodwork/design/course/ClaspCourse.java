package rodwork.design.course;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.design.arm.Arm;
import rodwork.design.clasp.Fact;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/**
 * The arms of one clasp on the scanned tooth.
 *
 * @param retentive from its rigid origin to its tip
 * @param opposing from rest or minor connector to its end; empty where the clasp has none
 * @param encirclementDeg how much of the crown its contacts go round: 360° less the widest gap
 * @param crossingDeg angle at which a bar crosses the gingival margin [degrees]
 * @param standsOnMark whether the tip lies on a mark of its gauge, or where a person put it; else
 *     it stands where a mark would have to be made
 * @param shape what a person made of the retentive arm
 */
public record ClaspCourse(
    Arm retentive,
    List<Vec3> opposing,
    double encirclementDeg,
    OptionalDouble crossingDeg,
    boolean standsOnMark,
    ArmShape shape) {
  /** Where exactly an arm begins is open to this [mm]. */
  static final double LENGTH_MM = 0.5;

  /** Only this share of an arm at its end lies below the survey line: common practice. */
  private static final double TERMINAL = 1 / 3.0;

  /** Contacts are read every few degrees. */
  static final double READ_DEG = 3;

  /** How exactly the direction of a margin is known from its points [degrees]. */
  private static final double CROSSING_DEG = 3;

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

  /** What the course tells of itself to the clauses of its family. */
  public Map<Fact, Reading> readings() {
    Map<Fact, Reading> readings = new EnumMap<>(Fact.class);
    Reading length = Reading.mm(retentive.lengthMm(), LENGTH_MM);
    readings.put(Fact.CIRCLET_LENGTH, length);
    readings.put(Fact.BAR_LENGTH, length);
    readings.put(Fact.ENCIRCLEMENT, Reading.degrees(encirclementDeg, READ_DEG));
    crossingDeg.ifPresent(
        deg -> readings.put(Fact.BAR_CROSSING, Reading.degrees(deg, CROSSING_DEG)));
    return readings;
  }

  /** The part of the retentive arm that does not give: all but its terminal third. */
  public List<Vec3> rigidPart() {
    List<Vec3> line = retentiveLine();
    double most = retentive.lengthMm() * (1 - TERMINAL);
    double along = 0;
    int end = 1;
    while (end < line.size()) {
      along += line.get(end).distance(line.get(end - 1));
      if (along > most) {
        break;
      }
      end++;
    }
    return line.subList(0, end);
  }

  /** The retentive arm as a curve, from its origin to its tip. */
  public List<Vec3> retentiveLine() {
    return retentive.line().stream().map(Arm.Station::point).toList();
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
