package rodwork.app.operation;

import java.util.List;
import rodwork.survey.Survey;

/**
 * A cast with one survey of it. Immutable.
 *
 * @param cast the cast
 * @param path the path surveyed
 * @param survey what was measured
 * @param notes what a person should know, one sentence each
 * @param millis how long field, lines and marks took [ms]
 */
public record SurveyedCast(
    OpenedCast cast, WantedPath.Resolved path, Survey survey, List<String> notes, double millis) {
  public SurveyedCast {
    notes = List.copyOf(notes);
  }
}
