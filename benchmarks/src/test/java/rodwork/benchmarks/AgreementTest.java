package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class AgreementTest {
  @Test
  void bothKindsOfDifferenceAreCounted() {
    assertThat(Agreement.sentence("Other", new byte[] {1, 1, 0, 0}, new byte[] {1, 0, 1, 1}))
        .contains("agree on 25.00 % of 4 vertices")
        .contains("2 are hidden to Other alone, 1 to Embree alone");
  }
}
