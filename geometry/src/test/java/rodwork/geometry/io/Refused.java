package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import rodwork.geometry.Refusal;

/** Checks that broken input is refused with its own code. */
final class Refused {
  private Refused() {}

  static void with(IoProblem problem, ThrowingCallable action) {
    Throwable thrown = catchThrowable(action);
    assertThat(thrown).as("a refusal of " + problem).isInstanceOf(Refusal.class);
    Refusal refusal = (Refusal) thrown;
    assertThat(refusal.code()).as(refusal.getMessage()).isEqualTo(problem.code());
    assertThat(refusal.advice()).isNotBlank();
  }

  static void file(IoProblem problem, byte[] content) {
    with(problem, () -> Samples.read(content));
  }

  static void file(IoProblem problem, String content) {
    file(problem, Samples.bytes(content));
  }
}
