package rodwork.app.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.anatomy.FrameFinding;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Remark;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.TotalTilt;

/** Surveys an opened cast at a path. */
public final class RunSurvey {
  private RunSurvey() {}

  /**
   * Surveys.
   *
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static SurveyedCast of(OpenedCast cast, WantedPath wanted, Gauges gauges, Watch watch) {
    WantedPath.Resolved path = wanted.on(cast);
    long start = System.nanoTime();
    Survey survey = cast.surveyor().survey(path.axis(), gauges, watch);
    double millis = (System.nanoTime() - start) / 1e6;
    return new SurveyedCast(cast, path, survey, notes(cast, path), millis);
  }

  /**
   * The depths alone, for a picture that moves: no lines, no marks.
   *
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static SurveyedCast field(OpenedCast cast, WantedPath wanted, Gauges gauges, Watch watch) {
    WantedPath.Resolved path = wanted.on(cast);
    long start = System.nanoTime();
    Survey survey = cast.surveyor().field(path.axis(), gauges, watch);
    return new SurveyedCast(cast, path, survey, List.of(), (System.nanoTime() - start) / 1e6);
  }

  /**
   * The depths of a thinned cast, for a picture that moves.
   *
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static SurveyedCast thinned(
      OpenedCast cast, ThinnedCast thinned, WantedPath wanted, Gauges gauges, Watch watch) {
    WantedPath.Resolved path = wanted.on(cast);
    long start = System.nanoTime();
    Survey survey = thinned.surveyor().field(path.axis(), gauges, watch);
    return new SurveyedCast(cast, path, survey, List.of(), (System.nanoTime() - start) / 1e6);
  }

  /**
   * A survey of the whole cast for one who reads a few places of it: no lines, no marks, and depths
   * found where they are asked for, as exact as ever.
   *
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static SurveyedCast places(
      OpenedCast cast, WantedPath wanted, Gauges gauges, Watch watch) {
    WantedPath.Resolved path = wanted.on(cast);
    long start = System.nanoTime();
    Survey survey = cast.surveyor().places(path.axis(), gauges, watch);
    return new SurveyedCast(cast, path, survey, List.of(), (System.nanoTime() - start) / 1e6);
  }

  /** What a person should know before trusting the figures. */
  private static List<String> notes(OpenedCast cast, WantedPath.Resolved path) {
    List<String> notes = new ArrayList<>();
    SurveyRules rules = cast.surveyor().rules();
    FrameFinding found = cast.finding();
    if (found == null) {
      String why = cast.frameProblem() == null ? "" : cast.frameProblem().getMessage();
      notes.add("The arch frame is not known, so no tilt is said. " + why);
    } else {
      TotalTilt total = TotalTilt.of(path.axis(), found.frame());
      if (total.passes(rules.tiltLimit())) {
        notes.add(
            String.format(
                Locale.ROOT,
                "Total tilt %.1f°, over the limit of %.0f°: the patient may be unable to open far"
                    + " enough to seat the denture.",
                total.deg(),
                rules.tiltLimit().value()));
      } else if (total.passes(rules.tiltWarn())) {
        notes.add(
            String.format(
                Locale.ROOT,
                "Total tilt %.1f°: final tilts are rarely over %.0f° to %.0f°.",
                total.deg(),
                rules.tiltWarn().value(),
                rules.tiltLimit().value()));
      }
      if (!found.confident()) {
        notes.add(
            String.format(
                Locale.ROOT,
                "The arch frame is known only to ± %.0f° (up) and ± %.0f° (front): look at it"
                    + " before trusting a tilt; --up and --front set it.",
                found.frame().upUncertaintyDeg(),
                found.frame().frontUncertaintyDeg()));
      }
      if (cast.jaw() == Jaw.UNKNOWN) {
        notes.add("Upper or lower is not known, so right and left are not told: --jaw says it.");
      }
    }
    cast.cast().report().warnings().stream().map(Remark::line).forEach(notes::add);
    return notes;
  }
}
