package rodwork.design.preparation;

import java.util.List;
import java.util.stream.Stream;
import rodwork.design.cut.PlaneLimits;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * How much may be cut; sources stand in the rulebook.
 *
 * @param cuts how far planes and walls may be cut
 * @param enamelWarn enamel above which a cut is warned of
 * @param dimpleLength of a retentive depression, along the arch
 * @param dimpleHeight of a retentive depression, along the tooth
 * @param seatEnamel enamel at the thinnest place of an occlusal surface
 * @param cingulumDepth depth that a cingulum rest wants of its seat
 * @param incisalDepth depth that an incisal rest wants of its seat
 * @param seatRise how much higher the floor of an occlusal seat is at the ridge than where it is
 *     deepest
 * @param seatAngle most that the floor of an occlusal seat may enclose with the minor connector
 * @param crownFrom as many functions that no cut can serve want a surveyed crown
 */
public record PreparationRules(
    PlaneLimits cuts,
    Threshold enamelWarn,
    Threshold dimpleLength,
    Threshold dimpleHeight,
    Threshold seatEnamel,
    Threshold cingulumDepth,
    Threshold incisalDepth,
    Threshold seatRise,
    Threshold seatAngle,
    Threshold crownFrom) {

  /** The values of a rulebook. */
  public static PreparationRules from(Thresholds book) {
    return new PreparationRules(
        PlaneLimits.from(book),
        book.get("enamel-warn", "mm"),
        book.get("dimple-length", "mm"),
        book.get("dimple-height", "mm"),
        book.get("seat-enamel", "mm"),
        book.get("cingulum-rest-depth", "mm"),
        book.get("incisal-rest-depth", "mm"),
        book.get("rest-floor-rise", "mm"),
        book.get("rest-floor-angle-most", "degrees"),
        book.get("surveyed-crown-from", "1"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return Stream.concat(
            cuts.all().stream(),
            Stream.of(
                enamelWarn,
                dimpleLength,
                dimpleHeight,
                seatEnamel,
                cingulumDepth,
                incisalDepth,
                seatRise,
                seatAngle,
                crownFrom))
        .toList();
  }
}
