package rodwork.survey.tripod;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why a path cannot be kept or found again: every refusal of this package. */
public enum TripodProblem {
  NO_PLACE(
      "tripod-no-place",
      "No three tripod marks can be set at this path: no level has three surfaces that a rod can"
          + " touch, sloping %.0f° to %.0f°, whose distances differ by %.1f mm.",
      "Keep the path with the axis itself and a rescan, or set the marks on a cast with more of the"
          + " palate or the tissue below the teeth."),
  OFF_SURFACE(
      "tripod-mark-no-level",
      "No surface at the height of the other marks within %.1f mm of the place chosen.",
      "Choose a place nearer to the level line of the other two marks."),
  THREE_POINTS(
      "tripod-three-points",
      "Tripod marks are three points, and %d were given.",
      "Pick the three marks, each once."),
  DISTANCES(
      "tripod-distances-disagree",
      "The distances of the picked points disagree with the marks by up to %.2f mm (%s against"
          + " %s); the limit is %.1f mm.",
      "Pick the marks anew; if they still disagree, this is another cast, or its unit is another."),
  AMBIGUOUS(
      "tripod-ambiguous",
      "The picked points pair with the marks in two ways, off by %.2f and %.2f mm at most; the"
          + " limit is %.1f mm.",
      "Set marks whose distances differ by more, or lay the whole rescan on the first scan."),
  RESCAN(
      "rescan-does-not-fit",
      "The rescan does not fit the first scan: %.0f %% of it lies within %.1f mm, the limit is"
          + " %.0f %% (median distance %.2f mm).",
      "Check that both are scans of the same cast in the same unit; if the cast was changed, use"
          + " tripod marks.");

  private final String code;
  private final String text;
  private final String advice;

  TripodProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  public String advice() {
    return advice;
  }

  /** The refusal with its values, in the order of the text. */
  public Refusal with(Object... values) {
    return new Refusal(code, String.format(Locale.ROOT, text, values), advice);
  }
}
