package rodwork.design.cut;

import java.util.List;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * How far a guiding plane may be cut; sources stand in the rulebook.
 *
 * @param enamelFront most enamel taken from a surface of a front tooth
 * @param enamelBack most enamel taken from a surface of a back tooth
 * @param leastBounded least height of a prepared plane next to a bounded space
 * @param leastFreeEnd least height of a prepared plane next to a free end
 * @param armHeight where up the crown an arm that braces lies, as a share of it
 * @param armLowest where up the crown it may lie at least
 * @param startLower how much lower a plane may begin than the rule has it, to spare enamel
 */
public record PlaneLimits(
    Threshold enamelFront,
    Threshold enamelBack,
    Threshold leastBounded,
    Threshold leastFreeEnd,
    Threshold armHeight,
    Threshold armLowest,
    Threshold startLower) {

  /** The values of a rulebook. */
  public static PlaneLimits from(Thresholds book) {
    return new PlaneLimits(
        book.get("enamel-most-front", "mm"),
        book.get("enamel-most-back", "mm"),
        book.get("prepared-plane-least-bounded", "mm"),
        book.get("prepared-plane-least-free-end", "mm"),
        book.get("reciprocal-arm-height", "1"),
        book.get("reciprocal-arm-lowest", "1"),
        book.get("plane-start-lower-most", "mm"));
  }

  /** The most enamel that may be taken from a surface of a tooth. */
  public Threshold enamel(ToothNumber tooth) {
    return tooth.isAnterior() ? enamelFront : enamelBack;
  }

  /** The least height of a prepared plane. */
  public Threshold least(boolean freeEnd) {
    return freeEnd ? leastFreeEnd : leastBounded;
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        enamelFront, enamelBack, leastBounded, leastFreeEnd, armHeight, armLowest, startLower);
  }
}
