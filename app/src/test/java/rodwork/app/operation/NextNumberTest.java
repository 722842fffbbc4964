package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/** Sides and order from the frame's own words: +X is the patient's left above and right below. */
class NextNumberTest {
  private static ToothNumber at(Jaw jaw, double x, double y, Set<ToothNumber> missing) {
    ArchFrame frame = new ArchFrame(Vec3.ZERO, new Vec3(0, 1, 0), new Vec3(0, 0, 1), jaw, 1, 1);
    return NextNumber.at(frame, jaw, null, missing, new Vec3(x, y, 5));
  }

  @ParameterizedTest
  @EnumSource(mode = Mode.EXCLUDE, names = "UNKNOWN")
  void aToothGetsANumberOfItsSideAndRegion(Jaw jaw) {
    double left = jaw == Jaw.UPPER ? 1 : -1;
    for (Side side : Side.values()) {
      double x = side == Side.LEFT ? left : -left;
      ToothNumber incisor = at(jaw, 4 * x, 22, Set.of());
      ToothNumber molar = at(jaw, 24 * x, -8, Set.of());
      assertThat(incisor.jaw()).isEqualTo(jaw);
      assertThat(incisor.side()).isEqualTo(side);
      assertThat(incisor.isIncisor()).isTrue();
      assertThat(molar.side()).isEqualTo(side);
      assertThat(molar.isMolar()).isTrue();
      // One that is said to be missing is not offered.
      assertThat(at(jaw, 24 * x, -8, Set.of(molar))).isNotEqualTo(molar);
    }
  }
}
