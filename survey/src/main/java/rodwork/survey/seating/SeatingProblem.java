package rodwork.survey.seating;

import java.util.Locale;
import rodwork.geometry.Refusal;

/** Why a seating aid cannot be made. */
enum SeatingProblem {
  NO_THREE_SEATS(
      "key-no-three-seats",
      "The cast offers no three biting surfaces for a seating key: a triangle at least %.0f mm high"
          + " is needed, the widest is %.1f mm.",
      "Use tripod marks, or a wedge under the base."),
  NO_BASE(
      "wedge-no-base",
      "The cast has no flat base for a wedge: of its %d large flat faces none lies within %.0f° of"
          + " the table.",
      "Use a seating key or tripod marks.");

  private final String code;
  private final String text;
  private final String advice;

  SeatingProblem(String code, String text, String advice) {
    this.code = code;
    this.text = text;
    this.advice = advice;
  }

  Refusal with(Object... values) {
    return new Refusal(code, String.format(Locale.ROOT, text, values), advice);
  }
}
