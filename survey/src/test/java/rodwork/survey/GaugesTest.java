package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Names and fit of the gauges. Sizes 0.010, 0.020, 0.030 inch, trade-rounded to 0.25, 0.50, 0.75
 * mm: Dunn, Treatment planning for removable partial dentures; Ankara University open textbook,
 * chapter 7.
 */
class GaugesTest {
  @Test
  void namesAreNominal() {
    assertThat(Gauges.name(0.25)).isEqualTo("0.25 mm · 0.010 in");
    assertThat(Gauges.name(0.50)).isEqualTo("0.50 mm · 0.020 in");
    assertThat(Gauges.name(0.75)).isEqualTo("0.75 mm · 0.030 in");
  }

  @Test
  void fitsWithinThreeHundredths() {
    assertThat(Gauges.COMMON.fitting(0.279, 0.03)).isEqualTo(0.25);
    assertThat(Gauges.COMMON.fitting(0.281, 0.03)).isNaN();
    assertThat(Gauges.COMMON.describe(0.36, 0.03)).isEqualTo("between 0.25 and 0.50");
    assertThat(Gauges.COMMON.describe(0.1, 0.03)).isEqualTo("less than 0.25");
    assertThat(Gauges.COMMON.describe(0.9, 0.03)).isEqualTo("more than 0.75");
    assertThat(Gauges.COMMON.describe(0.48, 0.03)).isEqualTo("0.50 mm · 0.020 in fits");
  }

  @Test
  void sizesRise() {
    assertThatThrownBy(() -> new Gauges(List.of(0.5, 0.25))).hasMessageContaining("[0.5, 0.25]");
    assertThatThrownBy(() -> new Gauges(List.of())).hasMessageContaining("at least one");
  }
}
