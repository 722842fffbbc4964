package rodwork.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FindingTest {
  @Test
  void theSentenceCarriesEverything() {
    Finding finding =
        Finding.of(
            "bar-stand-off",
            "total stand-off",
            Place.of("tooth 35, mid-facial, 6 mm below the margin"),
            Reading.mm(1.823, 0.04),
            new Limit.Most(1.5, "mm"),
            "no published source",
            Standing.COMMON_PRACTICE);
    assertThat(finding.verdict()).isEqualTo(Verdict.NOT_MET);
    assertThat(finding.sentence(Integer::toString))
        .isEqualTo(
            "total stand-off, tooth 35, mid-facial, 6 mm below the margin: 1.82 ± 0.04 mm; wanted at"
                + " most 1.5 mm – not met (common practice: no published source)");
  }
}
