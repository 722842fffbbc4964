package rodwork.design.clasp;

import java.util.List;
import java.util.stream.Stream;
import rodwork.rules.Threshold;
import rodwork.survey.Gauges;

/**
 * All that the judgement of clasps rests on.
 *
 * @param families all kinds of clasps
 * @param preferences the weightiest first
 * @param fits how far from its gauge an undercut may be and still fit it [mm]
 */
public record ClaspBook(List<Family> families, List<Preference> preferences, Threshold fits) {
  public ClaspBook {
    families = List.copyOf(families);
    preferences = List.copyOf(preferences);
  }

  /** The gauges to survey with: the common ones, and all that its families take. */
  public Gauges gauges() {
    return new Gauges(
        Stream.concat(
                Gauges.COMMON.sizesMm().stream(), families.stream().map(f -> f.gauge().value()))
            .distinct()
            .sorted()
            .toList());
  }
}
