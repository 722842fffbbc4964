package rodwork.anatomy.kennedy;

import java.util.List;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.rules.Wording;

/**
 * A space: missing teeth in a row, with no tooth that counts between them.
 *
 * @param missing from the patient's right to left
 * @param freeRight whether no tooth that counts stands behind it on the right
 * @param freeLeft the same on the left
 */
public record ToothRun(List<ToothNumber> missing, boolean freeRight, boolean freeLeft)
    implements Wording.Worded {
  public ToothRun {
    missing = List.copyOf(missing);
    if (missing.isEmpty()) {
      throw new IllegalArgumentException("a space has at least one missing tooth");
    }
  }

  public boolean bounded() {
    return !freeRight && !freeLeft;
  }

  public boolean crossesMidline() {
    return missing.getFirst().side() == Side.RIGHT && missing.getLast().side() == Side.LEFT;
  }

  /** How far back it reaches: the greatest place from the midline, 1 to 8. */
  public int reach() {
    return Math.max(missing.getFirst().place(), missing.getLast().place());
  }

  /** Such as {@code 15–13}, or {@code 11}. */
  @Override
  public Wording wording() {
    return missing.size() == 1
        ? Wording.of(missing.getFirst())
        : Wording.of(missing.getFirst(), "–", missing.getLast());
  }

  @Override
  public String toString() {
    return wording().fdi();
  }
}
