package rodwork.casework.prescription;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.survey.TotalTilt;

/** What is left open, said on paper instead of hidden. */
final class OpenPoints {
  private OpenPoints() {}

  static List<String> of(PrescriptionContent content, Numbers numbers) {
    List<String> open = new ArrayList<>();
    content.kennedy().questions().forEach(question -> open.add(numbers.in(question.text())));
    List<String> notSaid =
        ToothNumber.allOf(content.chart().jaw())
            .filter(
                tooth -> !tooth.isThirdMolar() && !content.dentition().standing().contains(tooth))
            .filter(tooth -> content.chart().tooth(tooth).replace() == Answer.NOT_KNOWN)
            .map(numbers::of)
            .toList();
    if (!notSaid.isEmpty()) {
      open.add(
          "Not said whether to replace, replaced if nobody objects: "
              + String.join(", ", notSaid)
              + ".");
    }
    TotalTilt total = TotalTilt.of(content.tilt());
    if (total.passes(content.rules().tiltWarn())) {
      open.add(
          String.format(
              Locale.ROOT,
              "The path is tilted by %.1f° in all, over the %.0f° that are usual%s. Try at the"
                  + " chair whether the patient opens far enough for it.",
              total.deg(),
              content.rules().tiltWarn().value(),
              total.passes(content.rules().tiltLimit())
                  ? String.format(
                      Locale.ROOT,
                      " and over the limit of %.0f°",
                      content.rules().tiltLimit().value())
                  : ""));
    }
    if (content.chart().allergiesAsked() != Answer.YES) {
      open.add("The patient has not been asked about nickel, cobalt and chromium.");
    }
    if (content.tripod() == null) {
      open.add(
          "The cast has no three places that serve as tripod marks; use the scan at its path.");
    }
    content.plan().questions().forEach(question -> open.add(numbers.in(question)));
    content.chart().notJudged().stream()
        .map(PrescriptionContent::word)
        .sorted()
        .forEach(what -> open.add("Named in the chart and not judged by Rodwork: " + what + "."));
    content.notes().forEach(open::add);
    content.chart().notes().forEach(note -> open.add("Chart: " + note));
    return open;
  }
}
