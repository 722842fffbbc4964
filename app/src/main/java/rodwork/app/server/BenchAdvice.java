package rodwork.app.server;

import java.util.Map;
import rodwork.anatomy.AnatomyProblem;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;

/**
 * What to do next, said to a person at the bench: refusals whose advice speaks of options of the
 * command line say there what to click.
 */
final class BenchAdvice {
  private static final String TWO_QUESTIONS =
      "Answer the two questions over the cast: turn it until you look straight down on the biting"
          + " surfaces, then click its front.";

  private static final Map<String, String> AT_THE_BENCH =
      Map.of(
          AppRefusal.TEETH_NEED_JAW.code(),
          "Click upper or lower beside the name of the cast.",
          AppRefusal.ANSWER_WRONG.code(),
          "Take the answer back with undo, or in the open row of the ledger, and click one of the"
              + " words offered there.",
          AppRefusal.TILT_PAST_LIMIT.code(),
          "Take another path, or allow more beside the tilt map where you know that the mouth opens"
              + " far enough.",
          AnatomyProblem.NO_ARCH.code(),
          "Check that the file shows one whole cast and is read in the right unit of length; if it"
              + " does, answer the two questions over the cast.",
          AnatomyProblem.UP_UNCERTAIN.code(),
          TWO_QUESTIONS,
          AnatomyProblem.FRONT_UNCERTAIN.code(),
          TWO_QUESTIONS,
          AnatomyProblem.FRONT_ALONG_UP.code(),
          "Click nearer to the front of the cast, between the central incisors, or turn it again"
              + " until you look straight down on the biting surfaces.");

  private BenchAdvice() {}

  static String of(Refusal refusal) {
    return AT_THE_BENCH.getOrDefault(refusal.code(), refusal.advice());
  }
}
