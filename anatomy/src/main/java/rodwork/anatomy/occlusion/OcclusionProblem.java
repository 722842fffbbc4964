package rodwork.anatomy.occlusion;

import java.util.Locale;
import rodwork.geometry.Refusal;

/**
 * Why an occlusal plane or the room to the opposing teeth is not told, each with its stable code.
 */
public enum OcclusionProblem {
  TOO_FEW_TIPS(
      "occlusal-plane-too-few-teeth",
      "%d teeth lie within %.1f mm of one plane; an occlusal plane needs at least %d.",
      "Choose other teeth, or set the plane by three points."),
  POINTS_IN_LINE(
      "occlusal-plane-points-in-line",
      "The three points for the occlusal plane lie nearly in line: the least height of their"
          + " triangle is %.1f mm, the limit is %.1f mm.",
      "Choose points wider apart, such as an incisal edge and a molar cusp on each side."),
  OPPOSING_ELSEWHERE(
      "opposing-elsewhere",
      "The opposing scan lies over %.0f %% of the teeth's side of the cast, at least %.0f %% are"
          + " needed: the two scans do not share one frame.",
      "Export both in the frame of the bite, or give a scan of both in occlusion as the bite scan."),
  OPPOSING_IS_CAST(
      "opposing-is-cast",
      "The opposing scan is this cast: %.0f %% of its surface lies on it within %.2f mm.",
      "Give the scan of the other jaw."),
  BITE_UNSURE(
      "bite-unsure",
      "The bite scan does not fit: %.0f %% of it lie on the cast and %.0f %% on the opposing scan,"
          + " %.0f %% on either, within %.1f mm; wanted are %.0f %% on each and %.0f %% together.",
      "Check that it shows both of these jaws in occlusion, in the same unit; or export all scans"
          + " in one frame and leave it out.");

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
