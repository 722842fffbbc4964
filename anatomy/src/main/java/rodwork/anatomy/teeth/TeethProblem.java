package rodwork.anatomy.teeth;

import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/** Why teeth are not told, or told with doubt: each with its stable code and its text. */
public enum TeethProblem {
  NO_TEETH(
      "no-teeth",
      "No tooth is recognised along the arch: %s.",
      "Check jaw and direction of the scan, or give one point on the biting surface of each tooth,"
          + " with its number."),
  UPSIDE_DOWN(
      "cast-upside-down",
      "Seen from the occlusal side that is set, the cast shows its underside: %.0f %% of its surface"
          + " faces away.",
      "Turn the direction to the occlusal side round (--up X,Y,Z), or leave it out to have it"
          + " found."),
  FEW_TEETH(
      "few-teeth",
      "%d of the teeth of an arch are recognised; their numbers do not follow from their order.",
      "Give one point on each tooth, with its number."),
  POINT_OFF_CAST(
      "tooth-point-off-cast",
      "The point of tooth %s lies %.1f mm from the cast; the limit is %.1f mm.",
      "Give it in the scan's own frame, in mm, on the biting surface of the tooth."),
  WRONG_JAW(
      "tooth-of-the-other-jaw",
      "Tooth %s is of the other jaw: this is the %s one.",
      "Correct the number, or say which jaw the scan is of."),
  NUMBERS_UNSURE(
      "tooth-numbers-unsure",
      "The numbers of %s are uncertain: another row of teeth fits about as well.",
      "Say which teeth are missing, or correct the numbers."),
  MISSING_STANDS(
      "missing-tooth-stands",
      "Tooth %s is called missing, but %.1f mm of crown stand where it would be.",
      "Take it off the list of missing teeth if it stands."),
  MIRRORED(
      "teeth-mirrored",
      "The missing teeth fit the other side of the arch better: right and left may be exchanged.",
      "Check whether the scan is mirrored and that the missing teeth are those of the patient's"
          + " right and left."),
  TWO_SURFACES(
      "two-surfaces",
      "The scan has two separate surfaces of %.0f and %.0f mm²: perhaps two jaws.",
      "Give each jaw its own file, or give one point a tooth.");

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
    Wording said = Wording.format(text, values);
    return new Refusal(code, said.fdi(), advice, said.pieces());
  }

  ToothFinding.Remark remark(Object... values) {
    return new ToothFinding.Remark(code, Wording.format(text, values), advice);
  }
}
