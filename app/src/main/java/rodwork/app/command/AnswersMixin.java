package rodwork.app.command;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rodwork.app.report.AnswerReader;
import rodwork.design.abutment.Answers;

/** What only the mouth tells. */
final class AnswersMixin {
  @Option(
      names = "--answer",
      paramLabel = "[FDI:]FACT=VALUE",
      description =
          "What only the mouth tells, or what is known better than measured: poor-hygiene=no,"
              + " 35:mobile=yes; may be given many times.")
  private @Nullable List<String> answers;

  /**
   * The answers.
   *
   * @throws rodwork.geometry.Refusal if one names no fact, or is none
   */
  Answers said() {
    return answers == null ? Answers.NONE : AnswerReader.of(answers);
  }

  boolean given() {
    return answers != null;
  }
}
