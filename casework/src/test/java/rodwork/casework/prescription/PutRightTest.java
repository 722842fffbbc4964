package rodwork.casework.prescription;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Step;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

class PutRightTest {
  private static final Threshold HEIGHT = Threshold.own("plane-height", 3, "mm", "test");
  private static final Threshold OTHER = Threshold.own("undercut", 0.25, "mm", "test");
  private static final Finding AS_IT_IS = plane(HEIGHT, 34, "distal", 0.9, 0.3);

  private static Finding plane(Threshold rule, int tooth, String side, double mm, double give) {
    return Finding.least(
        rule, "height", Place.of(ToothNumber.of(tooth), side), Reading.mm(mm, give));
  }

  private static MouthPreparation reading(Finding... after) {
    Step step =
        new Step(
            3,
            Step.Kind.GUIDING_PLANE,
            ToothNumber.of(34),
            Surface.DISTAL,
            "guiding plane",
            Vec3.ZERO,
            0.3,
            3,
            1,
            List.of(after),
            List.of(),
            Optional.empty(),
            Optional.empty());
    return new MouthPreparation(List.of(step), List.of(), List.of(), List.of());
  }

  /** Cut beyond the limit, or to it; not where it stays below by as much as is told. */
  @ParameterizedTest
  @CsvSource({"3.4, true", "3.0, true", "2.999, true", "2.99, false", "2.3, false"})
  void whatIsCutToTheLimitIsPutRight(double after, boolean right) {
    Optional<PutRight> found =
        PutRight.of(AS_IT_IS, reading(plane(HEIGHT, 34, "distal", after, 0.03)));
    assertThat(found.isPresent()).isEqualTo(right);
    found.ifPresent(
        put -> {
          assertThat(put.step().number()).isEqualTo(3);
          assertThat(put.after().reading()).isEqualTo(Reading.mm(after, 0.03));
        });
  }

  @Test
  void anotherToothSideOrRuleIsNotAndNothingIsAssumed() {
    assertThat(PutRight.of(AS_IT_IS, reading(plane(HEIGHT, 35, "distal", 4, 0)))).isEmpty();
    assertThat(PutRight.of(AS_IT_IS, reading(plane(HEIGHT, 34, "mesial", 4, 0)))).isEmpty();
    assertThat(PutRight.of(AS_IT_IS, reading(plane(OTHER, 34, "distal", 4, 0)))).isEmpty();
    assertThat(PutRight.of(AS_IT_IS, reading())).isEmpty();
    Finding notKnown =
        Finding.least(
            HEIGHT,
            "height",
            Place.of(ToothNumber.of(34), "distal"),
            new Reading.NotKnown("not seen"));
    assertThat(PutRight.of(AS_IT_IS, reading(notKnown))).isEmpty();
    Finding met = plane(HEIGHT, 34, "distal", 3.5, 0.1);
    assertThat(PutRight.of(met, reading(met))).isEmpty();
  }
}
