package rodwork.survey.plane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

/** Truth: closed forms of a straight wall and of an arc. */
class PlaneSectionTest {
  private static final Vec3 OUT = Vec3.X;

  /** A flat roof that ends in a wall leaning outward to the gum by an angle. */
  private static PlaneSection wall(double angleDeg) {
    double lean = Math.tan(Math.toRadians(angleDeg));
    List<Vec3> line = new ArrayList<>();
    for (int i = 10; i > 0; i--) {
      line.add(new Vec3(-0.2 * i, 0, -0.1 * i));
    }
    for (int i = 0; i <= 60; i++) {
      line.add(new Vec3(lean * 0.1 * i, 0, -0.1 * i));
    }
    return new PlaneSection(line, 10);
  }

  @Test
  void aLeaningWallGivesItsAngleAndTheWedgeAboveIt() {
    for (double angle : new double[] {-6, -1, 0, 2, 5}) {
      PlaneSection.Cut cut = wall(angle).cut(Vec3.Z, OUT, 0.5, 3).orElseThrow();
      double wedge = 3 * Math.tan(Math.toRadians(Math.abs(angle)));
      assertThat(cut.angleDeg()).isCloseTo(angle, within(1e-9));
      assertThat(cut.heightMm()).isCloseTo(3, within(1e-9));
      assertThat(cut.greatestMm()).isCloseTo(wedge, within(1e-9));
      assertThat(cut.meanMm()).isCloseTo(wedge / 2, within(1e-9));
    }
  }

  @Test
  void aTiltOfThePathAddsToTheAngle() {
    for (double tilt : new double[] {-8, -3, 4, 10}) {
      double rad = Math.toRadians(tilt);
      Vec3 axis = new Vec3(Math.sin(rad), 0, Math.cos(rad));
      PlaneSection.Cut cut = wall(2).cut(axis, OUT, 0.5, 2).orElseThrow();
      // The axis leaning outward makes the wall look more convergent.
      assertThat(cut.angleDeg()).isCloseTo(2 + tilt, within(1e-9));
    }
  }

  @Test
  void anArcLosesTheSagittaOfItsChord() {
    double radius = 5;
    List<Vec3> line = new ArrayList<>();
    for (int i = -50; i <= 150; i++) {
      double angle = Math.toRadians(90 - i);
      line.add(new Vec3(radius * Math.cos(angle), 0, radius * Math.sin(angle)));
    }
    PlaneSection arc = new PlaneSection(line, 50);
    // From 3 mm below the top to 7 mm below it: the equator in the middle of the window.
    PlaneSection.Cut cut = arc.cut(Vec3.Z, OUT, 3, 4).orElseThrow();
    assertThat(cut.angleDeg()).isCloseTo(0, within(1e-6));
    assertThat(cut.greatestMm()).isCloseTo(radius - Math.sqrt(21), within(1e-3));
    double segment = radius * radius * Math.asin(2 / radius) - 2 * Math.sqrt(21);
    assertThat(cut.meanMm()).isCloseTo(segment / 4, within(1e-3));
  }

  @Test
  void aToothThatEndsEarlyGivesTheHeightThatIsThere() {
    assertThat(wall(0).cut(Vec3.Z, OUT, 0.5, 9).orElseThrow().heightMm())
        .isCloseTo(5.5, within(1e-9));
    assertThat(wall(0).cut(Vec3.Z, OUT, 6.5, 3)).isEmpty();
  }
}
