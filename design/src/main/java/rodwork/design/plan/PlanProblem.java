package rodwork.design.plan;

import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/** Choices that cannot be planned, each with its stable code. */
public enum PlanProblem {
  NO_SUCH_TOOTH(
      "plan-tooth-not-standing",
      "A choice names tooth %s, which does not stand on this cast when the denture is made.",
      "Name a standing tooth of this jaw by its FDI number."),
  ON_IMPLANT(
      "plan-on-implant",
      "A choice lays a part on tooth %s, which the chart calls an implant: implants are recognised,"
          + " and not judged.",
      "Choose a tooth, or correct the chart where it is one."),
  NO_SUCH_FAMILY(
      "plan-family-not-known",
      "A choice names the clasp family \"%s\" for tooth %s, which the rulebook does not know.",
      "Take an id that rodwork abutments lists, or none."),
  OTHER_JAW(
      "plan-connector-of-other-jaw",
      "A choice names a %s, and this cast is of the %s jaw.",
      "Choose a kind of connector of this jaw.");

  private final String code;
  private final String text;
  private final String advice;

  PlanProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  Refusal with(Object... values) {
    Wording said = Wording.format(text, values);
    return new Refusal(code, said.fdi(), advice, said.pieces());
  }
}
