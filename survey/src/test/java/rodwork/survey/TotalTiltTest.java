package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.rules.Limit;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;

/** At a limit, just below and just above it: predicate and verdict say the same. */
class TotalTiltTest {
  private static final ArchFrame FRAME =
      new ArchFrame(Vec3.ZERO, new Vec3(0, 1, 0), new Vec3(0, 0, 1), Jaw.UPPER, 0, 0);

  @ParameterizedTest
  @ValueSource(doubles = {10, 15})
  void aTiltThatEqualsItsLimitDoesNotPassIt(double deg) {
    Threshold limit = Threshold.own("tilt", deg, "degrees", "test");
    // All round, by tilt and by axis: trigonometry leaves an error of either sign.
    for (int i = 0; i < 360; i++) {
      double angle = Math.toRadians(i);
      double tan = Math.tan(Math.toRadians(deg));
      Tilt tilt =
          new Tilt(
              Math.toDegrees(Math.atan(tan * Math.cos(angle))),
              Math.toDegrees(Math.atan(tan * Math.sin(angle))));
      held(TotalTilt.of(tilt), limit, false);
      held(TotalTilt.of(tilt.axis(FRAME), FRAME), limit, false);
    }
    held(new TotalTilt(deg - 1e-5), limit, false);
    held(new TotalTilt(deg + 1e-5), limit, true);
    held(new TotalTilt(deg + 1e-9), limit, false);
  }

  private static void held(TotalTilt total, Threshold limit, boolean passes) {
    assertThat(total.passes(limit)).as("%s against %s", total, limit).isEqualTo(passes);
    assertThat(new Limit.Most(limit.value(), limit.unit()).judge(total.reading()))
        .isEqualTo(passes ? Verdict.NOT_MET : Verdict.MET);
  }

  @Test
  void noAngleIsRefused() {
    assertThatThrownBy(() -> new TotalTilt(Double.NaN)).hasMessageContaining("NaN");
    assertThatThrownBy(() -> new TotalTilt(-1)).hasMessageContaining("-1");
  }
}
