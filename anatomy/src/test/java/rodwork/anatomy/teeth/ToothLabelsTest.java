package rodwork.anatomy.teeth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ToothLabelsTest {
  @Test
  void keepsNumbersAndNamesTheTriangleOfAWrongOne() {
    int[] given = {11, 0, 48, 11};
    ToothLabels labels = ToothLabels.of(given);
    given[0] = 0;
    assertThat(labels.of(0)).isEqualTo(11);
    assertThat(labels.numbers()).containsExactly(11, 48);
    assertThatThrownBy(() -> ToothLabels.of(new int[] {11, 19}))
        .hasMessageContaining("triangle 1")
        .hasMessageContaining("19");
  }
}
