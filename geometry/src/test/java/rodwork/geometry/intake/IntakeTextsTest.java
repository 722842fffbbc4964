package rodwork.geometry.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** All texts of the intake: codes unique and stable in form, sentences whole, braces paired. */
class IntakeTextsTest {
  private static final String CODE = "[a-z]+(-[a-z]+)*";

  @Test
  void refusalsAreWhole() {
    Set<String> codes = new HashSet<>();
    for (IntakeProblem problem : IntakeProblem.values()) {
      assertThat(problem.code()).matches(CODE);
      assertThat(codes.add(problem.code())).isTrue();
      assertThat(problem.template()).startsWith("{file}: ").endsWith(".");
      assertThat(problem.advice()).endsWith(".");
      assertThat(filled(problem.template())).doesNotContain("{", "}");
    }
  }

  @Test
  void remarksAreWhole() {
    for (RemarkKind kind : RemarkKind.values()) {
      assertThat(kind.code()).matches(CODE);
      assertThat(kind.template()).matches("[A-Z].*\\.");
      assertThat(filled(kind.template())).doesNotContain("{", "}");
    }
  }

  private static String filled(String template) {
    long braces = template.chars().filter(c -> c == '{').count();
    Object[] values = new Object[(int) braces];
    Arrays.fill(values, 1);
    return Phrase.fill(template, values);
  }

  @Test
  void valuesMustMatchBraces() {
    assertThatThrownBy(() -> Phrase.fill("{a} and {b}", 1)).hasMessageContaining("too few");
    assertThatThrownBy(() -> Phrase.fill("{a}", 1, 2)).hasMessageContaining("too many");
  }

  @Test
  void numbersAreShort() {
    assertThat(Phrase.fill("{a} {b} {c} {d} {e}", 12345, 0.18, 77.2, 5120.4, 1e-5))
        .isEqualTo("12,345 0.18 77.2 5,120 1.00e-05");
  }
}
