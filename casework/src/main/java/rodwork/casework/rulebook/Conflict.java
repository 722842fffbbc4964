package rodwork.casework.rulebook;

import java.util.List;
import rodwork.rules.Standing;

/**
 * A value that sources disagree on.
 *
 * @param id stable name; thresholds say "decided-by" it
 * @param topic what it is about
 * @param unit of all sides; {@code words} where they are no numbers
 * @param sides what the sources say
 * @param taken id of the side that is followed
 * @param because why
 */
public record Conflict(
    String id, String topic, String unit, List<Side> sides, String taken, String because) {
  /** What one side says; the value is NaN where it is words. */
  public record Side(String id, double value, String source, Standing standing) {}

  public Conflict {
    sides = List.copyOf(sides);
    if (sides.size() < 2 || sides.stream().noneMatch(s -> s.id().equals(taken))) {
      throw new IllegalArgumentException(
          "\"" + taken + "\" is none of its sides " + sides.stream().map(Side::id).toList());
    }
  }

  /** The side that is followed. */
  public Side side() {
    return sides.stream().filter(s -> s.id().equals(taken)).findFirst().orElseThrow();
  }
}
