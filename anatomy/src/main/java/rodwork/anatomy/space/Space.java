package rodwork.anatomy.space;

import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/**
 * A space in the row of teeth. Immutable; positions are in the scan frame [mm].
 *
 * @param missing the places in it, from the patient's right to left
 * @param right the standing tooth at its end towards the patient's right; empty: a free end
 * @param left the standing tooth at its other end
 * @param lengthMm between two teeth the shortest distance of their crowns; at a free end the length
 *     of the crest as far as the scan shows it
 * @param crest the crest of the ridge, from the patient's right to left, on the surface; empty
 *     where a tooth still stands in the space or the scan shows no ridge
 * @param positions where the middle of each missing tooth would stand on the crest, by the usual
 *     widths; empty where the crest is
 * @param closed whether the neighbours have closed up: then it is no space
 */
public record Space(
    List<ToothNumber> missing,
    Optional<ToothNumber> right,
    Optional<ToothNumber> left,
    double lengthMm,
    List<Vec3> crest,
    List<Position> positions,
    boolean closed) {
  /**
   * The place of one missing tooth.
   *
   * @param tooth its number
   * @param at on the crest [mm]
   */
  public record Position(ToothNumber tooth, Vec3 at) {}

  public Space {
    missing = List.copyOf(missing);
    crest = List.copyOf(crest);
    positions = List.copyOf(positions);
  }

  /** Whether teeth stand at both ends. */
  public boolean bounded() {
    return right.isPresent() && left.isPresent();
  }

  public boolean freeEnd() {
    return !bounded();
  }

  public boolean has(ToothNumber tooth) {
    return missing.contains(tooth);
  }

  @Override
  public String toString() {
    return "space " + missing;
  }
}
