package rodwork.design.preparation;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * How much may be cut; sources stand in the rulebook.
 *
 * @param enamelFront most enamel taken from a surface of a front tooth
 * @param enamelBack most enamel taken from a surface of a back tooth
 * @param enamelWarn enamel above which a cut is warned of
 * @param planeLeastBounded least height of a prepared plane next to a bounded space
 * @param planeLeastFreeEnd least height of a prepared plane next to a free end
 * @param dimpleLength of a retentive depression, along the arch
 * @param dimpleHeight of a retentive depression, along the tooth
 * @param seatEnamel enamel at the thinnest place of an occlusal surface
 * @param cingulumDepth depth that a cingulum rest wants of its seat
 * @param incisalDepth depth that an incisal rest wants of its seat
 * @param planeStartLower how much lower a plane may begin than the rule has it, to spare enamel
 * @param crownFrom as many functions that no cut can serve want a surveyed crown
 */
public record PreparationRules(
    Threshold enamelFront,
    Threshold enamelBack,
    Threshold enamelWarn,
    Threshold planeLeastBounded,
    Threshold planeLeastFreeEnd,
    Threshold dimpleLength,
    Threshold dimpleHeight,
    Threshold seatEnamel,
    Threshold cingulumDepth,
    Threshold incisalDepth,
    Threshold planeStartLower,
    Threshold crownFrom) {

  /** The values of a rulebook. */
  public static PreparationRules from(Thresholds book) {
    return new PreparationRules(
        book.get("enamel-most-front", "mm"),
        book.get("enamel-most-back", "mm"),
        book.get("enamel-warn", "mm"),
        book.get("prepared-plane-least-bounded", "mm"),
        book.get("prepared-plane-least-free-end", "mm"),
        book.get("dimple-length", "mm"),
        book.get("dimple-height", "mm"),
        book.get("seat-enamel", "mm"),
        book.get("cingulum-rest-depth", "mm"),
        book.get("incisal-rest-depth", "mm"),
        book.get("plane-start-lower-most", "mm"),
        book.get("surveyed-crown-from", "1"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        enamelFront,
        enamelBack,
        enamelWarn,
        planeLeastBounded,
        planeLeastFreeEnd,
        dimpleLength,
        dimpleHeight,
        seatEnamel,
        cingulumDepth,
        incisalDepth,
        planeStartLower,
        crownFrom);
  }
}
