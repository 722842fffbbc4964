package rodwork.anatomy.occlusion;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why an occlusal plane is not told, each with its stable code. */
public enum OcclusionProblem {
  TOO_FEW_TIPS(
      "occlusal-plane-too-few-teeth",
      "%d teeth lie within %.1f mm of one plane; an occlusal plane needs at least %d.",
      "Choose other teeth, or set the plane by three points."),
  POINTS_IN_LINE(
      "occlusal-plane-points-in-line",
      "The three points for the occlusal plane lie nearly in line: the least height of their"
          + " triangle is %.1f mm, the limit is %.1f mm.",
      "Choose points wider apart, such as an incisal edge and a molar cusp on each side.");

  private final String code;
  private final String text;
  private final String advice;

  OcclusionProblem(String code, String text, String advice) {
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
