package rodwork.geometry.intake;

import rodwork.geometry.Refusal;

/**
 * Every refusal of this package, in one place: stable code, text, advice. The first value of a text
 * is always the file.
 */
public enum IntakeProblem {
  NOT_FINITE(
      "coordinates-not-finite",
      "{file}: none of its {count} vertices has coordinates that are numbers within ±{limit}.",
      "The export went wrong: export the scan again, in another format if need be."),
  NO_TRIANGLES_LEFT(
      "no-triangles-left",
      "{file}: of its {count} triangles none has an area ({bad} have corners that are no finite"
          + " numbers, {collapsed} are lines or points).",
      "The export went wrong: export the scan again, in another format if need be."),
  UNIT_UNKNOWN(
      "unit-unknown",
      "{file}: it spans {span} in its own unit, which is {mm} as mm, {cm} as cm, {in} as inches, {m}"
          + " as metres; an arch spans {least} to {most} mm.",
      "Give the unit (mm, cm, in or m); if none fits, this is no scan of a dental arch."),
  TOO_SMALL(
      "cast-too-small",
      "{file}: with the unit {unit} it spans {span} mm; the limit is {limit} mm.",
      "Give another unit (mm, cm, in or m), or let it be found."),
  TOO_LARGE(
      "cast-too-large",
      "{file}: with the unit {unit} it spans {span} mm; the limit is {limit} mm.",
      "Give another unit (mm, cm, in or m), or let it be found.");

  private final String code;
  private final String template;
  private final String advice;

  IntakeProblem(String code, String template, String advice) {
    this.code = code;
    this.template = template;
    this.advice = advice;
  }

  /** Stable code, lower case with hyphens. */
  public String code() {
    return code;
  }

  String template() {
    return template;
  }

  public String advice() {
    return advice;
  }

  Refusal refusal(Object... values) {
    return new Refusal(code, Phrase.fill(template, values), advice);
  }
}
