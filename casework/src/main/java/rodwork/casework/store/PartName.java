package rodwork.casework.store;

import java.util.Comparator;
import rodwork.anatomy.Jaw;

/**
 * The name of a part within its case. It is never used as the name of a file.
 *
 * @param kind what it is
 * @param jaw the jaw it belongs to; {@code UNKNOWN}: neither, or both
 * @param label tells it from others of its kind, such as the name of the scan file; 1 to 200
 *     characters without control characters
 */
public record PartName(PartKind kind, Jaw jaw, String label) implements Comparable<PartName> {
  static final int LONGEST_LABEL = 200;

  private static final Comparator<PartName> ORDER =
      Comparator.comparing(PartName::kind)
          .thenComparing(PartName::jaw)
          .thenComparing(PartName::label);

  public PartName {
    if (label.isBlank()
        || label.length() > LONGEST_LABEL
        || label.chars().anyMatch(Character::isISOControl)) {
      throw StoreProblem.LABEL_WRONG.with(kind.word(), label.length(), LONGEST_LABEL);
    }
  }

  /** Such as {@code scan, upper, "model.stl"}; for messages. */
  @Override
  public String toString() {
    String whose = jaw == Jaw.UNKNOWN ? "" : (jaw == Jaw.UPPER ? ", upper" : ", lower");
    return kind.word() + whose + ", \"" + label + "\"";
  }

  @Override
  public int compareTo(PartName other) {
    return ORDER.compare(this, other);
  }
}
