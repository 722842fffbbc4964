package rodwork.anatomy.space;

import static rodwork.rules.Threshold.own;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * What the row of teeth is told by, with unit and source.
 *
 * @param closed least room between two neighbours that is a space [mm]
 */
public record SpaceRules(Threshold closed) {
  /** The values Rodwork ships with. */
  public static final SpaceRules SHIPPED =
      new SpaceRules(own("space-closed", 2, "mm", "no tooth that is replaced is narrower"));

  /** The values of a rulebook. */
  public static SpaceRules from(Thresholds book) {
    return new SpaceRules(book.get("space-closed", "mm"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(closed);
  }
}
