package rodwork.anatomy.occlusion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.dentition.LabelledArch;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;

/**
 * Real arches of different people, laid over each other by hand so that the bite is known: the bite
 * scan is what a scanner held to the cheeks would see of both, moved, with noise on its vertices.
 */
class BiteTest {
  private static final double NOISE_MM = 0.02;

  @ParameterizedTest
  @CsvSource({"lower-35, upper-14", "upper-11, lower-35-37-47", "lower-35-37-47, upper-15-24"})
  void aBiteScanLaysTheOpposingCast(String name, String otherName) {
    LabelledArch cast = LabelledArch.load(name);
    LabelledArch other = LabelledArch.load(otherName);
    // Off the first guess by what overjet and a steep plane may make.
    RigidMotion truth =
        RigidMotion.shift(cast.arch().frame().y().times(-3))
            .after(over(cast.arch().frame(), other.arch().frame(), 1))
            .after(RigidMotion.shift(other.arch().frame().origin()))
            .after(RigidMotion.turn(new Vec3(1, 3, 2), Math.toRadians(5)))
            .after(RigidMotion.shift(other.arch().frame().origin().times(-1)));
    RigidMotion moved =
        RigidMotion.shift(new Vec3(31, -12, 55)).after(RigidMotion.turn(new Vec3(1, 2, -1), 1.9));
    TriangleMesh bite = bite(cast, other, truth, moved);

    Bite found = Bite.of(side(cast), side(other), bite, Watch.NONE);

    assertThat(found.explained()).isGreaterThan(0.95);
    TriangleMesh mesh = other.arch().mesh();
    double worst = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 at = mesh.vertex(v);
      worst = Math.max(worst, found.toCast().point(at).distance(truth.point(at)));
    }
    assertThat(worst).as("farthest any place of the opposing cast lies off [mm]").isLessThan(0.05);
  }

  @Test
  void aBiteOfOtherJawsIsRefused() {
    LabelledArch cast = LabelledArch.load("lower-35");
    LabelledArch other = LabelledArch.load("upper-14");
    LabelledArch stranger = LabelledArch.load("upper-11");
    RigidMotion truth = over(cast.arch().frame(), stranger.arch().frame(), 1);
    TriangleMesh bite = bite(cast, stranger, truth, RigidMotion.NONE);
    assertThatThrownBy(() -> Bite.of(side(cast), side(other), bite, Watch.NONE))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("The bite scan does not fit")
        .extracting("code")
        .isEqualTo("bite-unsure");
  }

  @Test
  void theRoomFollowsTheBite() {
    LabelledArch cast = LabelledArch.load("lower-35");
    LabelledArch other = LabelledArch.load("upper-14");
    TriangleMesh mesh = other.arch().mesh();
    Vec3 probe = cast.dentition().tooth(46).orElseThrow().centroid();
    double[] room = new double[2];
    for (int k = 0; k < 2; k++) {
      RigidMotion motion = over(cast.arch().frame(), other.arch().frame(), 4 + k);
      room[k] = Clearance.of(cast.arch(), mesh, motion).at(probe);
    }
    assertThat(room[1] - room[0]).as("1 mm farther apart").isCloseTo(1, within(1e-9));
  }

  private static Bite.Side side(LabelledArch arch) {
    return new Bite.Side(arch.arch().mesh(), arch.arch().frame());
  }

  /** Turns the opposing arch over, front on front and left on left, so many mm higher. */
  private static RigidMotion over(ArchFrame cast, ArchFrame other, double mm) {
    RigidMotion fromOther =
        new RigidMotion(other.x(), other.y(), other.z(), Vec3.ZERO)
            .after(RigidMotion.shift(other.origin().times(-1)));
    RigidMotion turned = RigidMotion.turn(Vec3.Y, Math.PI);
    RigidMotion into = new RigidMotion(cast.x(), cast.y(), cast.z(), Vec3.ZERO).inverse();
    return RigidMotion.shift(cast.origin().plus(cast.z().times(mm)))
        .after(into.after(turned.after(fromOther)));
  }

  private static TriangleMesh bite(
      LabelledArch cast, LabelledArch other, RigidMotion toCast, RigidMotion moved) {
    TriangleMesh a = cast.arch().mesh();
    TriangleMesh b = Reshape.each(other.arch().mesh(), toCast::point);
    ArchFrame frame = cast.arch().frame();
    TriangleMesh both =
        Reshape.joined(Reshape.only(a, seen(a, frame)), Reshape.only(b, seen(b, frame)));
    Random noise = new Random(7);
    return Reshape.each(
        both,
        p ->
            moved.point(
                p.plus(
                    new Vec3(noise.nextGaussian(), noise.nextGaussian(), noise.nextGaussian())
                        .times(NOISE_MM))));
  }

  /** What faces outwards and lies within a finger's breadth of the biting surfaces. */
  private static IntPredicate seen(TriangleMesh mesh, ArchFrame frame) {
    return t -> {
      Vec3 at = frame.toArch(mesh.pointOn(t, 1 / 3.0, 1 / 3.0).minus(frame.origin()));
      Vec3 n = frame.toArch(mesh.doubleAreaNormal(t));
      Vec3 out = new Vec3(at.x(), at.y() + 10, 0);
      return Math.abs(at.z()) < 10 && n.dot(out) > 0.3 * n.length() * out.length();
    };
  }
}
