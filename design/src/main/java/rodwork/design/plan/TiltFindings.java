package rodwork.design.plan;

import java.util.List;
import rodwork.anatomy.ArchFrame;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.TotalTilt;

/** Holds the path of a plan against the tilts of practice: tilt-note, tilt-warn, tilt-limit. */
final class TiltFindings {
  private TiltFindings() {}

  static List<Finding> of(Survey survey, ArchFrame frame) {
    SurveyRules rules = survey.surveyor().rules();
    Reading total = TotalTilt.of(survey.axis(), frame).reading();
    return List.of(
        most(rules.tiltNote(), "total tilt of the path, a few degrees as a rule", total),
        most(rules.tiltWarn(), "total tilt of the path against what is usual", total),
        most(
            rules.tiltLimit(),
            "total tilt of the path, for the patient must open far enough to seat it",
            total));
  }

  private static Finding most(Threshold limit, String what, Reading reading) {
    return Finding.most(limit, what, Place.of("path of placement"), reading);
  }
}
