package rodwork.casework.rulebook;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why a rulebook cannot be used: every refusal of this package. */
public enum RulebookProblem {
  UNREADABLE(
      "rulebook-unreadable",
      "The rulebook %s cannot be read: %s.",
      "Check the name and that the file may be read."),
  TOO_LARGE(
      "rulebook-too-large",
      "The rulebook %s has %s bytes; the limit is %s bytes.",
      "Check that it is a rulebook; the shipped one has less than a tenth of that."),
  NO_YAML(
      "rulebook-no-yaml",
      "The rulebook %s is no YAML at line %s: %s.",
      "Mind the indentation and the quotes there; compare with the shipped rulebook."),
  FIELD(
      "rulebook-field",
      "The rulebook %s, line %s, field %s: %s.",
      "Correct that line; docs/rulebook.md tells what each field holds."),
  MISSING(
      "rulebook-threshold-missing",
      "The rulebook %s has no threshold \"%s\" (in %s).",
      "Copy it from the shipped rulebook: rodwork rulebook --out FILE."),
  UNUSED(
      "rulebook-threshold-unused",
      "The rulebook %s, line %s: nothing asks for the threshold \"%s\".",
      "Check the spelling, or take it out.");

  private final String code;
  private final String text;
  private final String advice;

  RulebookProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  /** The refusal with its values, in the order of the text. */
  public Refusal with(Object... values) {
    return new Refusal(code, String.format(Locale.ROOT, text, values), advice);
  }
}
