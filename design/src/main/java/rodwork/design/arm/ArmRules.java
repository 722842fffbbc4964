package rodwork.design.arm;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that the judgement of an arm's force rests on.
 *
 * @param leastFriction least coefficient of friction of an arm on a tooth
 * @param mostFriction greatest
 * @param warnBelow pull of one clasp below which it holds little
 * @param warnAbove pull above which it loads the tooth too much
 * @param dentureFrom least pull wanted of a whole denture
 * @param dentureTo greatest
 * @param stressShare greatest share of the proof stress
 */
public record ArmRules(
    Threshold leastFriction,
    Threshold mostFriction,
    Threshold warnBelow,
    Threshold warnAbove,
    Threshold dentureFrom,
    Threshold dentureTo,
    Threshold stressShare) {

  public static ArmRules from(Thresholds book) {
    return new ArmRules(
        book.get("arm-friction-least", "1"),
        book.get("arm-friction-most", "1"),
        book.get("clasp-pull-warn-below", "N"),
        book.get("clasp-pull-warn-above", "N"),
        book.get("denture-pull-from", "N"),
        book.get("denture-pull-to", "N"),
        book.get("arm-stress-share", "1"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        leastFriction, mostFriction, warnBelow, warnAbove, dentureFrom, dentureTo, stressShare);
  }
}
