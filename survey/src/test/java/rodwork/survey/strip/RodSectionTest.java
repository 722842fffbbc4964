package rodwork.survey.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.survey.plane.PlaneSection;

/** Truth: closed forms of an arc and of a straight wall. */
class RodSectionTest {
  private static final double RADIUS = 5;

  /** An arc from the top of a circle to an angle below its equator, a degree a step. */
  private static PlaneSection arc(int belowDeg) {
    List<Vec3> line = new ArrayList<>();
    for (int i = 0; i <= 90 + belowDeg; i++) {
      double angle = Math.toRadians(90 - i);
      line.add(new Vec3(RADIUS * Math.cos(angle), 0, RADIUS * Math.sin(angle)));
    }
    return new PlaneSection(line, 0);
  }

  @Test
  void anArcStandsOffTheRodByItsVersine() {
    RodSection section = RodSection.of(arc(60), Vec3.Z, Vec3.X);
    assertThat(section.gapMm()).isCloseTo(RADIUS * (1 - Math.cos(Math.PI / 3)), within(1e-9));
    assertThat(section.rodMm()).isCloseTo(RADIUS, within(1e-9));
    assertThat(section.belowMm()).isCloseTo(RADIUS * Math.sin(Math.PI / 3), within(1e-9));
    assertThat(section.footMm()).isEqualTo(section.line().getLast().h());
  }

  @Test
  void aTiltTurnsTheArcUnderTheRod() {
    for (int tilt : new int[] {-15, -7, 4, 12}) {
      double rad = Math.toRadians(tilt);
      Vec3 axis = new Vec3(Math.sin(rad), 0, Math.cos(rad));
      // An axis that leans outward carries the contact down by as much, and leaves less below it.
      double left = Math.toRadians(60 - tilt);
      assertThat(RodSection.of(arc(60), axis, Vec3.X).gapMm())
          .as("tilt %s", tilt)
          .isCloseTo(RADIUS * (1 - Math.cos(left)), within(1e-9));
    }
  }

  @Test
  void whatFlaresOutHasNoGap() {
    RodSection section = RodSection.of(arc(-10), Vec3.Z, Vec3.X);
    assertThat(section.gapMm()).isZero();
    assertThat(section.contact()).isEqualTo(section.line().getLast());
  }

  @Test
  void theRodStopsWhereTheSurfaceComesOutAgain() {
    List<Vec3> line = new ArrayList<>();
    for (double[] spot : new double[][] {{0, 0}, {1, -1}, {0.4, -2}, {1.5, -3}, {1.6, -4}}) {
      line.add(new Vec3(spot[0], 0, spot[1]));
    }
    RodSection section = RodSection.of(new PlaneSection(line, 0), Vec3.Z, Vec3.X);
    assertThat(section.gapMm()).isCloseTo(0.6, within(1e-12));
    assertThat(section.footMm()).isCloseTo(-3, within(1e-12));
  }
}
