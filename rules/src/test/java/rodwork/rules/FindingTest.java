package rodwork.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FindingTest {
  @Test
  void aThresholdIsALeastOrAMostWithItsSource() {
    Threshold rule = Threshold.own("bar-height", 4, "mm", "test");
    Finding least = Finding.least(rule, "height", Place.of("bar"), Reading.mm(3.5, 0.1));
    assertThat(least.verdict()).isEqualTo(Verdict.NOT_MET);
    assertThat(least.limit()).isEqualTo(new Limit.Least(4, "mm"));
    assertThat(least.source()).isEqualTo("test");
    assertThat(least.standing()).isEqualTo(Standing.OWN_CHOICE);
    Finding most = Finding.most(rule, "height", Place.of("bar"), Reading.mm(3.5, 0.1));
    assertThat(most.verdict()).isEqualTo(Verdict.MET);
    assertThat(most.limit()).isEqualTo(new Limit.Most(4, "mm"));
    assertThat(most.rule()).isEqualTo("bar-height");
  }

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
            "total stand-off, tooth 35, mid-facial, 6 mm below the margin: 1.82 ± 0.04 mm; wanted"
                + " at most 1.5 mm – not met (common practice: no published source)");
  }
}
