package rodwork.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class LimitTest {
  private static final Limit MOST = new Limit.Most(1.5, "mm");
  private static final Limit LEAST = new Limit.Least(3, "mm");

  @Test
  void aNumberWithinItsUncertaintyIsTooCloseToCall() {
    assertThat(MOST.judge(Reading.mm(1.40, 0.05))).isEqualTo(Verdict.MET);
    assertThat(MOST.judge(Reading.mm(1.47, 0.05))).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(MOST.judge(Reading.mm(1.50, 0.05))).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(MOST.judge(Reading.mm(1.53, 0.05))).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(MOST.judge(Reading.mm(1.56, 0.05))).isEqualTo(Verdict.NOT_MET);
    assertThat(LEAST.judge(Reading.mm(2.9, 0.05))).isEqualTo(Verdict.NOT_MET);
    assertThat(LEAST.judge(Reading.mm(3.1, 0.05))).isEqualTo(Verdict.MET);
  }

  @Test
  void anExactNumberAtItsLimitMeetsIt() {
    assertThat(MOST.judge(Reading.mm(1.5, 0))).isEqualTo(Verdict.MET);
    assertThat(LEAST.judge(Reading.mm(3, 0))).isEqualTo(Verdict.MET);
    assertThat(LEAST.judge(Reading.mm(2.999, 0))).isEqualTo(Verdict.NOT_MET);
  }

  @Property(tries = 200, seed = "4711")
  void theOtherSideOfALimitIsTheOppositeVerdict(
      @ForAll @DoubleRange(min = -5, max = 5) double value,
      @ForAll @DoubleRange(min = 0, max = 1) double uncertainty) {
    Reading reading = Reading.mm(value, uncertainty);
    Verdict most = new Limit.Most(1, "mm").judge(reading);
    Verdict least = new Limit.Least(1, "mm").judge(reading);
    if (Math.abs(value - 1) > 1e-9) {
      assertThat(most == Verdict.MET).isEqualTo(least == Verdict.NOT_MET);
      assertThat(most == Verdict.NOT_MET).isEqualTo(least == Verdict.MET);
    }
    assertThat(most == Verdict.TOO_CLOSE_TO_CALL).isEqualTo(least == Verdict.TOO_CLOSE_TO_CALL);
  }

  @Test
  void aLowerBoundDecidesOneSideOnly() {
    assertThat(LEAST.judge(new Reading.AtLeast(3, "mm"))).isEqualTo(Verdict.MET);
    assertThat(LEAST.judge(new Reading.AtLeast(2, "mm"))).isEqualTo(Verdict.NOT_KNOWN);
    assertThat(MOST.judge(new Reading.AtLeast(2, "mm"))).isEqualTo(Verdict.NOT_MET);
    assertThat(MOST.judge(new Reading.AtLeast(1, "mm"))).isEqualTo(Verdict.NOT_KNOWN);
  }

  @Test
  void whatIsNotKnownIsNeitherAndNoRoomNeverPasses() {
    for (Limit limit : List.of(MOST, LEAST, new Limit.OneOf(List.of("yes")))) {
      assertThat(limit.judge(new Reading.NotKnown("not asked"))).isEqualTo(Verdict.NOT_KNOWN);
      assertThat(limit.judge(new Reading.NoRoom("4.1 mm deep"))).isEqualTo(Verdict.NOT_MET);
    }
  }

  @Test
  void wordsAreJudgedByWords() {
    Limit limit = new Limit.OneOf(List.of("medium", "low"));
    assertThat(limit.judge(new Reading.Word("low"))).isEqualTo(Verdict.MET);
    assertThat(limit.judge(new Reading.Word("high"))).isEqualTo(Verdict.NOT_MET);
    assertThat(new Limit.OneOf(List.of("no")).judge(Reading.yes(false))).isEqualTo(Verdict.MET);
  }

  @Test
  void unitsAndKindsAreNotMixed() {
    assertThatThrownBy(() -> MOST.judge(Reading.degrees(1, 0))).hasMessageContaining("degrees");
    assertThatThrownBy(() -> MOST.judge(new Reading.Word("low"))).hasMessageContaining("low");
    assertThatThrownBy(() -> new Limit.OneOf(List.of("low")).judge(Reading.mm(1, 0)))
        .hasMessageContaining("1.00 mm");
  }
}
