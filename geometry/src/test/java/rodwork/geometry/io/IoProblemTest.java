package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.geometry.Refusal;

class IoProblemTest {
  @ParameterizedTest
  @EnumSource
  void textsAreFilledAndWellFormed(IoProblem problem) {
    assertThat(problem.code()).matches("[a-z0-9]+(-[a-z0-9]+)+");
    assertThat(problem.template()).startsWith("{file}: ").endsWith(".");
    assertThat(problem.template().replaceAll("\\{[a-z]+}", "")).doesNotContain("{", "}");
    assertThat(problem.advice()).isNotBlank().endsWith(".");
  }

  @ParameterizedTest
  @EnumSource
  void everyBraceTakesOneValue(IoProblem problem) {
    long braces = Pattern.compile("\\{[a-z]+}").matcher(problem.template()).results().count();
    Object[] values = new Object[(int) braces];
    for (int i = 0; i < values.length; i++) {
      values[i] = "value" + i;
    }
    Refusal refusal = problem.refusal(values);
    assertThat(refusal.code()).isEqualTo(problem.code());
    assertThat(refusal.getMessage()).doesNotContain("{").contains("value" + (braces - 1));
    assertThatThrownBy(() -> problem.refusal(new Object[values.length + 1]))
        .isInstanceOf(RuntimeException.class);
  }

  @Test
  void codesAreDifferent() {
    Set<String> codes = new HashSet<>();
    for (IoProblem problem : IoProblem.values()) {
      assertThat(codes.add(problem.code())).as(problem.code()).isTrue();
    }
  }
}
