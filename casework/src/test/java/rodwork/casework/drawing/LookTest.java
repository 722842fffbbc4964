package rodwork.casework.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LookTest {
  /** Without their widths the samples still differ: a print does not tell 0.9 mm from 1.2 mm. */
  @Test
  void noTwoKindsLookAlikeButForTheWidthOfALine() {
    Set<String> seen = new HashSet<>();
    for (Look look : Look.values()) {
      String sample = look.sample(0, 0, 7, 2.4).replaceAll("stroke-width=\"[\\d.]+\"", "");
      assertThat(seen.add(sample)).as(look.words()).isTrue();
    }
  }

  /** Nothing but black on white. */
  @Test
  void allIsBlackOrWhite() {
    for (Look look : Look.values()) {
      assertThat(look.sample(0, 0, 7, 2.4).replaceAll("#111|#fff|url\\(#\\w+\\)", ""))
          .as(look.words())
          .doesNotContain("#");
    }
  }
}
