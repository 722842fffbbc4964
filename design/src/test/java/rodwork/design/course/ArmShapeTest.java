package rodwork.design.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

/** Truth: a straight arm of 12 mm on a plane, whose handles lie at 0, 4, 8 and 12 mm. */
final class ArmShapeTest {
  private static final List<Vec3> STRAIGHT =
      IntStream.rangeClosed(0, 12).mapToObj(i -> new Vec3(i, 0, 0)).toList();

  private static List<Vec3> shaped(ArmShape.Pull... pulls) {
    return new ArmShape(List.of(pulls)).of(STRAIGHT, UnaryOperator.identity());
  }

  @Test
  void aPulledHandleTakesTheArmAlongAsFarAsTheHandlesBeside() {
    List<Vec3> line = shaped(new ArmShape.Pull(1 / 3.0, new Vec3(4, 1, 0)));
    assertThat(line.get(4).y()).isCloseTo(1, within(1e-9));
    assertThat(line.get(2).y()).isCloseTo(0.5, within(1e-9));
    assertThat(line.get(6).y()).isCloseTo(0.5, within(1e-9));
    for (int i : new int[] {0, 8, 9, 12}) {
      assertThat(line.get(i)).isEqualTo(STRAIGHT.get(i));
    }
  }

  @Test
  void aPulledTipMovesAndSaysSo() {
    ArmShape shape = new ArmShape(List.of(new ArmShape.Pull(1, new Vec3(12, -2, 0))));
    assertThat(shape.movesTip()).isTrue();
    assertThat(shape.of(STRAIGHT, UnaryOperator.identity()).getLast())
        .isEqualTo(new Vec3(12, -2, 0));
    assertThat(new ArmShape(List.of(new ArmShape.Pull(0.5, Vec3.ZERO))).movesTip()).isFalse();
    assertThat(ArmShape.AS_LAID.movesTip()).isFalse();
  }

  @Test
  void whatMovesIsPutBackOntoWhatItLiesOnAndTheRestIsLeftAlone() {
    List<Vec3> line =
        new ArmShape(List.of(new ArmShape.Pull(0, new Vec3(0, 1, 5))))
            .of(STRAIGHT, p -> new Vec3(p.x(), p.y(), 0));
    assertThat(line.getFirst()).isEqualTo(new Vec3(0, 1, 0));
    assertThat(line.subList(4, 13)).isEqualTo(STRAIGHT.subList(4, 13));
  }

  @Test
  void aShareBeyondTheArmIsRefused() {
    assertThatThrownBy(() -> new ArmShape.Pull(1.2, Vec3.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1.2");
  }
}
