package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;

/**
 * The signs of the two tilts, against arches drawn by hand.
 *
 * <p>The drawings are what one sees with the cast before one, teeth up, seen from above. A lower
 * cast lies as in the mouth: its front away from the viewer, the patient's right is the viewer's
 * right. An upper cast is turned over to have its teeth up: with its front away from the viewer the
 * patient's right is the viewer's <em>left</em>.
 *
 * <pre>
 *   upper          front            lower          front
 *               . - F - .                       . - F - .
 *             /           \                   /           \
 *      right R             L left      left  L             R right
 *            |             |                 |             |
 *                 back B                          back B
 * </pre>
 *
 * <p>Truth: the words "goes down". Under an upright rod the height of a point is its coordinate
 * along the axis, so what goes down against the reference orientation has less of it. No formula of
 * the class under test is used.
 */
class TiltTest {
  /** An arch in its scan frame: the drawing's right is +x there, its top +y, the viewer +z. */
  private record Drawn(Jaw jaw, Vec3 front, Vec3 back, Vec3 right, Vec3 left) {
    static Drawn of(Jaw jaw) {
      Vec3 front = new Vec3(0, 25, 0);
      Vec3 back = new Vec3(0, -20, 0);
      Vec3 viewersLeft = new Vec3(-27, -10, 0);
      Vec3 viewersRight = new Vec3(27, -10, 0);
      return jaw == Jaw.UPPER
          ? new Drawn(jaw, front, back, viewersLeft, viewersRight)
          : new Drawn(jaw, front, back, viewersRight, viewersLeft);
    }

    ArchFrame frame() {
      return new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, jaw, 1, 1);
    }
  }

  /** How much higher the first point stands than the second, at a tilt [mm]. */
  private static double higher(Tilt tilt, ArchFrame frame, Vec3 first, Vec3 second) {
    Vec3 p = tilt.axis(frame);
    return first.minus(second).dot(p);
  }

  @ParameterizedTest
  @CsvSource({
    "UPPER, 10, 0, down, level",
    "UPPER, -10, 0, up, level",
    "UPPER, 0, 10, level, down",
    "UPPER, 0, -10, level, up",
    "LOWER, 10, 0, down, level",
    "LOWER, -10, 0, up, level",
    "LOWER, 0, 10, level, down",
    "LOWER, 0, -10, level, up",
  })
  void goesDownWhereItsSignSays(
      Jaw jaw, double anterior, double right, String front, String patientsRight) {
    Drawn arch = Drawn.of(jaw);
    Tilt tilt = new Tilt(anterior, right);
    assertGoes(front, higher(tilt, arch.frame(), arch.front, arch.back), 45);
    assertGoes(patientsRight, higher(tilt, arch.frame(), arch.right, arch.left), 54);
  }

  private static void assertGoes(String where, double rise, double apart) {
    // At 10° two points so far apart come to stand higher and lower by that much.
    double expected = apart * Math.sin(Math.toRadians(10));
    switch (where) {
      case "down" -> assertThat(rise).isCloseTo(-expected, within(1e-9));
      case "up" -> assertThat(rise).isCloseTo(expected, within(1e-9));
      default -> assertThat(rise).isCloseTo(0, within(1e-9));
    }
  }

  /** The frame's own words: +X is the patient's left on an upper, right on a lower cast. */
  @ParameterizedTest
  @EnumSource(
      value = Jaw.class,
      names = {"UPPER", "LOWER"})
  void theDrawingIsThatOfTheFrame(Jaw jaw) {
    Drawn arch = Drawn.of(jaw);
    ArchFrame frame = arch.frame();
    assertThat(frame.toArch(arch.front.minus(arch.back)).y()).isPositive();
    double left = frame.toArch(arch.left.minus(arch.right)).x();
    assertThat(jaw == Jaw.UPPER ? left : -left).isPositive();
  }

  @ParameterizedTest
  @EnumSource(
      value = Jaw.class,
      names = {"UPPER", "LOWER"})
  void bothTiltsAtOnceLowerTheCornerBetween(Jaw jaw) {
    Drawn arch = Drawn.of(jaw);
    Vec3 rightFront = arch.front.plus(arch.right).times(0.5);
    Vec3 leftBack = arch.back.plus(arch.left).times(0.5);
    assertThat(higher(new Tilt(6, 6), arch.frame(), rightFront, leftBack)).isNegative();
    assertThat(higher(new Tilt(-6, -6), arch.frame(), rightFront, leftBack)).isPositive();
  }

  @ParameterizedTest
  @CsvSource({"UPPER, 7, -12", "UPPER, -3, 0", "LOWER, 7, -12", "LOWER, 0, 29", "LOWER, -41, 8"})
  void theAxisTellsItsTilt(Jaw jaw, double anterior, double right) {
    Vec3 z = new Vec3(0.3, -0.2, 0.9).unit();
    Vec3 y = new Vec3(0.1, 1, 0).across(z).unit();
    ArchFrame frame = new ArchFrame(Vec3.ZERO, y, z, jaw, 1, 1);
    Tilt tilt = new Tilt(anterior, right);
    Tilt again = Tilt.of(tilt.axis(frame), frame);
    assertThat(again.anteriorDeg()).isCloseTo(anterior, within(1e-9));
    assertThat(again.rightDeg()).isCloseTo(right, within(1e-9));
    assertThat(tilt.totalDeg()).isCloseTo(tilt.axis(frame).angleDegTo(z), within(1e-9));
  }

  @Test
  void rightIsUnknownWhereTheJawIs() {
    ArchFrame frame = new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UNKNOWN, 1, 1);
    assertThat(new Tilt(5, 0).axis(frame).y()).isNegative();
    assertThatThrownBy(() -> new Tilt(0, 1).axis(frame))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Tilt.of(new Vec3(0.1, 0, 1), frame))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void refusesTiltsThatLieDown() {
    assertThatThrownBy(() -> new Tilt(90, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Tilt(0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    ArchFrame frame = new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 1, 1);
    assertThatThrownBy(() -> Tilt.of(new Vec3(0, 0, -1), frame))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
