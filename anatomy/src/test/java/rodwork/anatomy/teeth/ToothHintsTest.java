package rodwork.anatomy.teeth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

class ToothHintsTest {
  private static final ToothHints TWO =
      new ToothHints(
          Set.of(13), List.of(new ToothHints.Point(11, Vec3.X), new ToothHints.Point(12, Vec3.Y)));

  @Test
  void eachCorrectionMakesNewHints() {
    assertThat(TWO.with(new ToothHints.Point(13, Vec3.Z)).missing()).isEmpty();
    assertThat(TWO.without(12).missing()).containsExactlyInAnyOrder(12, 13);
    assertThat(TWO.without(12).points()).hasSize(1);
    assertThat(TWO.renumbered(Map.of(11, 12, 12, 11)).points())
        .contains(new ToothHints.Point(12, Vec3.X), new ToothHints.Point(11, Vec3.Y));
    ToothHints one = TWO.merged(11, 12, 1.5);
    assertThat(one.missing()).containsExactly(13);
    assertThat(one.pins()).containsExactly(new ToothHints.Pin(11, Vec3.Y, 1.5));
    assertThat(TWO.points()).hasSize(2);
  }

  @Test
  void refusesWhatContradictsItself() {
    assertThatThrownBy(() -> TWO.renumbered(Map.of(11, 12))).hasMessageContaining("two points");
    assertThatThrownBy(() -> new ToothHints.Pin(19, Vec3.X, 1)).hasMessageContaining("19");
    assertThatThrownBy(() -> new ToothHints.Pin(11, Vec3.X, 0)).hasMessageContaining("radius");
  }
}
