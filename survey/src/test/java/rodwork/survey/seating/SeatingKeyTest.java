package rodwork.survey.seating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Intake;
import rodwork.geometry.intake.IntakeOptions;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.MeshCheck;
import rodwork.geometry.testing.Shared;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.Tilt;

/** Truth: the definition of the upper envelope, asked of the cast, and plane geometry. */
class SeatingKeyTest {
  private static final SeatingRules RULES = SeatingRules.SHIPPED;

  private static Surveyor surveyor(TriangleMesh mesh) {
    return Surveyor.of(
        MeshTopology.of(mesh), AnatomicSurface.whole(mesh), null, SurveyRules.SHIPPED);
  }

  private static TriangleMesh balls() {
    TriangleMesh ball = Bodies.ellipsoid(4, 4, 5, 0.4);
    return Bodies.join(
        Bodies.moved(ball, new Vec3(-20, -15, 0)),
        Bodies.moved(ball, new Vec3(20, -15, 0.5)),
        Bodies.moved(ball, new Vec3(0, 22, -0.5)));
  }

  /**
   * Every point of the key lies over the envelope of the cast, so that no way along the axis can
   * meet the cast; and each pad comes down to the gap.
   */
  private static void liftsOff(SeatingKey key, Surveyor surveyor) {
    MeshCheck.closedAndOriented(key.mesh());
    Overhang overhang = surveyor.probe(key.axis(), Watch.NONE);
    double nearest = Double.POSITIVE_INFINITY;
    for (int v = 0; v < key.mesh().vertexCount(); v++) {
      Vec3 q = key.mesh().vertex(v);
      double room = q.dot(key.axis()) - overhang.topOver(q);
      assertThat(room).as("room over the cast at %s [mm]", q).isGreaterThan(0.02);
      nearest = Math.min(nearest, room);
    }
    assertThat(nearest).isLessThan(1.5 * key.gapMm());
    TriangleTree tree = TriangleTree.of(key.mesh());
    for (Vec3 seat : key.seats()) {
      assertThat(tree.closest(seat).orElseThrow().distance())
          .as("gap over the seat %s", seat)
          .isBetween(0.6 * key.gapMm(), 1.4 * key.gapMm());
    }
  }

  @Test
  void aKeyOnRoundCrownsLiftsOffAtAnyTilt() {
    Surveyor surveyor = surveyor(balls());
    for (Vec3 axis : List.of(Vec3.Z, new Vec3(0.15, -0.2, 1))) {
      SeatingKey key = SeatingKey.of(surveyor, Vec3.Z, axis, RULES, Watch.NONE);
      liftsOff(key, surveyor);
    }
  }

  @Test
  void thePostStandsAlongThePathAtItsDiameter() {
    Vec3 axis = new Vec3(0.1, 0.1, 1).unit();
    SeatingKey key = SeatingKey.of(surveyor(balls()), Vec3.Z, axis, RULES.withPost(4), Watch.NONE);
    double top = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < key.mesh().vertexCount(); v++) {
      top = Math.max(top, key.mesh().vertex(v).dot(axis));
    }
    Vec3 middle = key.seats().stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / 3).across(axis);
    for (int v = 0; v < key.mesh().vertexCount(); v++) {
      Vec3 q = key.mesh().vertex(v);
      if (Math.abs(q.dot(axis) - (top - 10)) < 5) {
        assertThat(q.across(axis).minus(middle).length()).isCloseTo(2, within(0.03));
      }
    }
  }

  @Test
  void theErrorOfTheAxisIsThatOfThreeSeats() {
    // An upright triangle of base 40 and height 30: the worst is the apex up, the base down.
    List<Vec3> seats = List.of(new Vec3(-20, 0, 0), new Vec3(20, 0, 0), new Vec3(0, 30, 0));
    double apex = Math.toDegrees(Math.atan2(0.2, 30));
    double side = Math.toDegrees(Math.atan2(0.2, 40));
    assertThat(SeatingKey.axisErrorDeg(seats, Vec3.Z, 0.1))
        .isBetween(apex, Math.hypot(apex, side) + 1e-9);
  }

  @Test
  void aRealCastGetsAKey() {
    TriangleMesh mesh =
        Intake.of(
                MeshFiles.read(Shared.file("arches/lower-dense.stl"), Watch.NONE),
                IntakeOptions.usual(),
                Watch.NONE)
            .mesh();
    Arch arch = Arch.of(MeshTopology.of(mesh), Jaw.LOWER, FrameHints.NONE);
    Surveyor surveyor = Surveyor.of(arch, SurveyRules.SHIPPED);
    Vec3 axis = new Tilt(6, -3).axis(arch.frame());
    SeatingKey key = SeatingKey.of(surveyor, arch.frame().z(), axis, RULES, Watch.NONE);
    liftsOff(key, surveyor);
    assertThat(key.axisErrorDeg()).isLessThan(0.6);
  }

  @Test
  void oneToothIsNotEnough() {
    assertThatThrownBy(
            () ->
                SeatingKey.of(
                    surveyor(Bodies.ellipsoid(4, 4, 5, 0.4)), Vec3.Z, Vec3.Z, RULES, Watch.NONE))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("12 mm");
  }
}
