package rodwork.anatomy.occlusion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.dentition.LabelledArch;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.registration.RigidMotion;

/**
 * The occlusal plane over teeth. Truth: the frame found without knowing any tooth, within its own
 * uncertainty; the same plane from a wrong start; three points, as a closed form. The casts whose
 * plane is known by construction are looked at in the demo module.
 */
class TeethPlaneTest {
  static Stream<String> arches() {
    return LabelledArch.NAMES.stream();
  }

  @ParameterizedTest
  @MethodSource("arches")
  void agreesWithTheFrameFoundWithoutTeeth(String name) {
    LabelledArch arch = LabelledArch.load(name);
    ArchFrame frame = arch.arch().frame();
    Dentition dentition = arch.dentition();
    TeethPlane plane = TeethPlane.over(frame, dentition.inOrder());
    double off = plane.frame().z().angleDegTo(frame.z());
    System.out.printf(
        "%s: teeth against shape %.1f° (shape ± %.1f°), anterior ± %.1f°, right ± %.1f°, rms %.2f mm, %d of %d tips%n",
        name,
        off,
        frame.upUncertaintyDeg(),
        plane.anteriorDeg(),
        plane.rightDeg(),
        plane.rmsMm(),
        plane.tips().stream().filter(TeethPlane.Tip::used).count(),
        plane.tips().size());
    assertThat(off).isLessThan(frame.upUncertaintyDeg() + plane.frame().upUncertaintyDeg());
    assertThat(plane.ask()).isEqualTo(Math.max(plane.anteriorDeg(), plane.rightDeg()) > 3);
    assertThat(plane.tips().stream().filter(TeethPlane.Tip::used))
        .allSatisfy(t -> assertThat(Math.abs(t.overMm())).isLessThan(1.7));
    // Started ten degrees off it comes to the same plane, or has said that it is not sure.
    Vec3 wrong =
        RigidMotion.turn(frame.x().plus(frame.y()), Math.toRadians(10)).direction(frame.z());
    ArchFrame tipped =
        new ArchFrame(
            frame.origin(), frame.y().across(wrong).unit(), wrong.unit(), frame.jaw(), 10, 10);
    TeethPlane again = TeethPlane.over(tipped, dentition.inOrder());
    assertThat(again.frame().z().angleDegTo(plane.frame().z()))
        .isLessThan(plane.ask() ? plane.anteriorDeg() + again.anteriorDeg() : 1.0);
  }

  @Test
  void aToothOutOfLineIsLeftOutAndTold() {
    LabelledArch arch = LabelledArch.load("upper-16-23");
    Dentition dentition = arch.dentition();
    TeethPlane plane = TeethPlane.over(arch.arch().frame(), dentition.inOrder());
    List<TeethPlane.Tip> out = plane.tips().stream().filter(t -> !t.used()).toList();
    assertThat(out).allSatisfy(t -> assertThat(Math.abs(t.overMm())).isGreaterThan(1.3));
  }

  @Test
  void twoTeethTellNoPlane() {
    LabelledArch arch = LabelledArch.load("lower-35");
    List<Tooth> two = arch.dentition().inOrder().stream().limit(2).toList();
    assertThatThrownBy(() -> TeethPlane.over(arch.arch().frame(), two))
        .hasMessageContaining("needs at least 3");
  }

  @Test
  void threePointsGiveTheirPlane() {
    ArchFrame frame = new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 8, 3);
    Vec3 a = new Vec3(0, 20, 1);
    Vec3 b = new Vec3(-25, -20, 0);
    Vec3 c = new Vec3(25, -20, 0);
    TeethPlane plane = TeethPlane.through(frame, a, b, c);
    assertThat(plane.frame().z().angleDegTo(Vec3.Z))
        .isCloseTo(Math.toDegrees(Math.atan(1 / 40.0)), within(1e-6));
    assertThat(plane.frame().z().dot(a.minus(b))).isCloseTo(0, within(1e-9));
    assertThat(plane.anteriorDeg()).isCloseTo(2 * 0.4297, within(0.01));
    assertThat(plane.ask()).isFalse();
    assertThat(TeethPlane.through(frame, c, b, a).frame().z().dot(Vec3.Z)).isPositive();
    assertThatThrownBy(() -> TeethPlane.through(frame, a, a.plus(Vec3.X), a.plus(Vec3.X.times(3))))
        .hasMessageContaining("nearly in line");
  }

  @Test
  void aFrameIsCarriedOver() {
    ArchFrame frame = new ArchFrame(new Vec3(1, 2, 3), Vec3.Y, Vec3.Z, Jaw.LOWER, 2, 3);
    RigidMotion motion =
        RigidMotion.shift(new Vec3(4, 5, 6)).after(RigidMotion.turn(new Vec3(1, 1, 0), 0.7));
    ArchFrame moved = frame.moved(motion);
    assertThat(moved.z().distance(motion.direction(Vec3.Z))).isLessThan(1e-12);
    assertThat(moved.origin()).isEqualTo(motion.point(frame.origin()));
    assertThat(moved.upUncertaintyDeg()).isEqualTo(2);
  }
}
