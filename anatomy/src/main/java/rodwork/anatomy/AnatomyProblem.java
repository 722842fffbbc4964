package rodwork.anatomy;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why anatomy is not told: every refusal of this module, with its stable code and its text. */
public enum AnatomyProblem {
  NO_ARCH(
      "no-arch",
      "No dental arch is recognised: %s.",
      "Check that the file shows one whole cast and is read in the right unit; if it does, give the"
          + " directions: --up X,Y,Z to the occlusal side and --front X,Y,Z to the front, in the"
          + " scan's own frame."),
  UP_UNCERTAIN(
      "occlusal-direction-uncertain",
      "The occlusal direction is uncertain: ± %.0f°, the limit is ± %.0f° (%s).",
      "Give it with --up X,Y,Z in the scan's own frame; --front X,Y,Z fixes the front as well."),
  FRONT_UNCERTAIN(
      "front-uncertain",
      "The direction to the front is uncertain: ± %.0f°, the limit is ± %.0f° (%s).",
      "Give it with --front X,Y,Z in the scan's own frame; --up X,Y,Z fixes the occlusal direction"
          + " as well."),
  FRONT_ALONG_UP(
      "front-along-up",
      "The front given lies %.0f° from the occlusal direction; at least %.0f° are needed to tell"
          + " where it points in the occlusal plane.",
      "Give --front X,Y,Z along the occlusal plane, or correct --up X,Y,Z.");

  private final String code;
  private final String text;
  private final String advice;

  AnatomyProblem(String code, String text, String advice) {
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
