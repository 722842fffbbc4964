package rodwork.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.geometry.Refusal;

class AppRefusalTest {
  @ParameterizedTest
  @EnumSource
  void textsAreCompleteSentencesWithTheirValues(AppRefusal refusal) {
    String[] values = new String[refusal.placeholders()];
    Arrays.setAll(values, i -> "VALUE" + i);
    Refusal said = refusal.with((Object[]) values);
    String all = said.getMessage() + said.advice();
    assertThat(values).allSatisfy(value -> assertThat(all).contains(value));
    assertThat(all).doesNotContain("%");
    assertThat(said.getMessage()).endsWith(".").hasSizeGreaterThan(20);
    assertThat(said.advice()).endsWith(".").hasSizeGreaterThan(20);
    assertThat(said.code()).matches("[a-z]+(-[a-z]+)*");
  }

  @Test
  void codesAreUnique() {
    Set<String> codes = new HashSet<>();
    for (AppRefusal refusal : AppRefusal.values()) {
      assertThat(codes.add(refusal.code())).as(refusal.code()).isTrue();
    }
  }
}
