package rodwork.casework.prescription;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why a prescription cannot be written: every refusal of this package. */
public enum PrescriptionProblem {
  ORDER_WRONG(
      "order-wrong",
      "%s cannot be used as an order: %s.",
      "It is a JSON object of texts; docs/prescription.md lists the fields."),
  PREVIOUS_WRONG(
      "previous-wrong",
      "%s is no prescription to go on from: %s.",
      "Give the prescription.json of the revision before, as Rodwork wrote it."),
  PAGES_FAILED(
      "pages-failed",
      "The pages of the prescription could not be made: %s.",
      "The JSON beside it is whole. Check that this Java has its drawing part (java.desktop).");

  private final String code;
  private final String text;
  private final String advice;

  PrescriptionProblem(String code, String text, String advice) {
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
