package rodwork.anatomy.teeth;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why teeth are not told, each with its stable code. */
public enum TeethProblem {
  POINTS_NEEDED(
      "teeth-points-needed",
      "The teeth of this cast are not found without a point on each: %d points were given.",
      "Give one point on the biting surface of each tooth, with its number."),
  POINT_OFF_CAST(
      "tooth-point-off-cast",
      "The point of tooth %d lies %.1f mm from the cast; the limit is %.1f mm.",
      "Give it in the scan's own frame, in mm, on the biting surface of the tooth.");

  private final String code;
  private final String text;
  private final String advice;

  TeethProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  public Refusal with(Object... values) {
    return new Refusal(code, String.format(Locale.ROOT, text, values), advice);
  }
}
