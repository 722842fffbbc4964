package rodwork.app.operation;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.survey.Gauges;
import rodwork.survey.SurveyRules;

/** Gauge sizes as they come from outside, checked. */
public final class GaugeSizes {
  private static final int MOST = 8;
  private static final double SMALLEST_MM = SurveyRules.SHIPPED.shallow().value();
  private static final double LARGEST_MM = SurveyRules.SHIPPED.cap().value();

  private GaugeSizes() {}

  /** What is wrong with the sizes, or null. */
  public static @Nullable String complaint(List<Double> sizesMm) {
    if (sizesMm.isEmpty() || sizesMm.size() > MOST) {
      return sizesMm.size() + " gauge sizes, 1 to " + MOST + " are taken";
    }
    for (double size : sizesMm) {
      if (!(size > SMALLEST_MM && size < LARGEST_MM)) {
        return String.format(
            Locale.ROOT,
            "a gauge of %s mm is outside the limits %.2f to %.0f mm",
            size,
            SMALLEST_MM,
            LARGEST_MM);
      }
    }
    return null;
  }

  /** The sizes as gauges, smallest first, each once. */
  public static Gauges of(List<Double> sizesMm) {
    return new Gauges(sizesMm.stream().distinct().sorted().toList());
  }
}
