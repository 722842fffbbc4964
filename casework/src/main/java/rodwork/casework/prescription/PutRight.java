package rodwork.casework.prescription;

import java.util.Optional;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Step;
import rodwork.rules.Finding;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;

/**
 * What of a plan the mouth preparation puts right: a step holds the surface as it will be against
 * the same rule at the same place, and what it reads, to the hundredth that is told, reaches the
 * limit. A step without such a reading puts nothing right, whatever it is meant for.
 *
 * @param step that does it
 * @param after what its cut is ordered to be
 */
public record PutRight(Step step, Finding after) {

  /**
   * Looks it up.
   *
   * @param finding of the plan
   * @return empty where it is met already, or stays open
   */
  public static Optional<PutRight> of(Finding finding, MouthPreparation preparation) {
    if (finding.verdict() == Verdict.MET) {
      return Optional.empty();
    }
    for (Step step : preparation.steps()) {
      for (Finding after : step.findings()) {
        if (reaches(after)
            && after.rule().equals(finding.rule())
            && after.place().words().equals(finding.place().words())) {
          return Optional.of(new PutRight(step, after));
        }
      }
    }
    return Optional.empty();
  }

  /** A wall is cut to its limit itself, which within the accuracy of a scan cannot be called. */
  private static boolean reaches(Finding after) {
    if (after.verdict() == Verdict.TOO_CLOSE_TO_CALL
        && after.reading() instanceof Reading.Measured read) {
      Reading told = new Reading.Measured(shown(read.value()), 0, read.unit());
      return after.limit().judge(told) == Verdict.MET;
    }
    return after.verdict() == Verdict.MET;
  }

  private static double shown(double value) {
    return Math.rint(value * 100) / 100;
  }
}
