package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.anatomy.AnatomyProblem;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;
import rodwork.geometry.intake.IntakeProblem;
import rodwork.geometry.io.IoProblem;

class BenchAdviceTest {
  /** What only the command line can run into. */
  private static final Set<AppRefusal> OF_THE_COMMAND_LINE =
      Set.of(
          AppRefusal.CASE_NEEDS_SCAN,
          AppRefusal.LABELS_OF_ANOTHER_SCAN,
          AppRefusal.RIGHT_NEEDS_JAW,
          AppRefusal.PORT_TAKEN);

  static Stream<Refusal> whatTheBenchMayShow() {
    return Stream.of(
            Stream.of(AnatomyProblem.values()).map(p -> new Refusal(p.code(), "", p.advice())),
            Stream.of(IntakeProblem.values()).map(p -> new Refusal(p.code(), "", p.advice())),
            Stream.of(IoProblem.values()).map(p -> new Refusal(p.code(), "", p.advice())),
            Stream.of(AppRefusal.values())
                .filter(p -> !OF_THE_COMMAND_LINE.contains(p))
                .map(p -> p.with("1", "2", "3", "4", "5", "6")))
        .flatMap(s -> s);
  }

  @ParameterizedTest
  @MethodSource
  void whatTheBenchMayShow(Refusal refusal) {
    assertThat(BenchAdvice.of(refusal))
        .as("advice of %s", refusal.code())
        .isNotBlank()
        .doesNotContainPattern("--[a-z]");
  }
}
