package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;

/** Gauge marks against closed forms: on a sphere of radius R the mark of g lies at ρ = R − g. */
class GaugeMarksTest {
  private static final double R = 4;

  private static int triangleAt(TriangleMesh mesh, Vec3 p) {
    int best = 0;
    double nearest = 1e9;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double d = mesh.pointOn(t, 1.0 / 3, 1.0 / 3).distance(p);
      if (d < nearest) {
        nearest = d;
        best = t;
      }
    }
    return best;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.2, 1.0})
  void circlesOnASphere(double edge) {
    Survey survey = Surveys.of(Bodies.sphere(R, edge), Vec3.Z);
    double flat = edge * edge / (8 * R);
    for (double gauge : Gauges.COMMON.sizesMm()) {
      double rho = R - gauge;
      assertThat(Surveys.markLength(survey, gauge))
          .as("gauge %.2f", gauge)
          .isCloseTo(2 * Math.PI * rho, within(edge > 0.5 ? 1.2 : 0.2));
      for (GaugeMark mark : survey.marks()) {
        if (mark.gaugeMm() == gauge) {
          for (Vec3 q : mark.points()) {
            assertThat(Math.hypot(q.x(), q.y())).isCloseTo(rho, within(0.01 + 2 * flat));
            assertThat(q.z()).isNegative();
          }
        }
      }
    }
  }

  /** Only the lower edge of the region below the survey line; not where the depth lessens again. */
  @Test
  void waistHasOneMarkOnItsUpperWall() {
    // A barrel over a waist over a foot as wide as the barrel: depth grows and lessens again.
    double[][] profile = new double[64][];
    profile[0] = new double[] {0, 0};
    for (int i = 0; i < 62; i++) {
      double z = 0.1 * i;
      profile[i + 1] =
          new double[] {4 - 0.6 * Math.pow(Math.sin(Math.PI * Math.min(1, z / 5)), 2), z};
    }
    profile[63] = new double[] {0, 6.1};
    Survey survey = Surveys.of(Bodies.revolve(profile, 160), Vec3.Z);
    assertThat(Surveys.markLength(survey, 0.25)).isCloseTo(2 * Math.PI * 3.75, within(0.5));
    for (GaugeMark mark : survey.marks()) {
      assertThat(mark.points()).allSatisfy(q -> assertThat(q.z()).isGreaterThan(2.5));
    }
  }

  /** A deep slot between two bodies takes no shank: no marks are proposed in it. */
  @Test
  void noMarkWhereNoGaugeReaches() {
    TriangleMesh two = Bodies.twoSpheres(R, 2 * R + 0.4, 0.25);
    Survey survey = Surveys.of(two, Vec3.Z);
    for (GaugeMark mark : survey.marks()) {
      for (Vec3 q : mark.points()) {
        double slot = Math.hypot(q.x(), q.y());
        assertThat(slot).as("distance from the contact of %s", q).isGreaterThan(1);
      }
    }
    assertThat(Surveys.markLength(survey, 0.25)).isGreaterThan(30);
  }

  @Test
  void seatIsTheMarkInTheSection() {
    TriangleMesh mesh = Bodies.sphere(R, 0.2);
    Survey survey = Surveys.of(mesh, Vec3.Z);
    Vec3 place = new Vec3(3.2, 0, -Math.sqrt(R * R - 3.2 * 3.2));
    int triangle = triangleAt(mesh, place);
    Vec3 on = mesh.pointOn(triangle, 1.0 / 3, 1.0 / 3);
    Seat seat = survey.seat(on, triangle, 0.25);
    assertThat(seat.place()).isPresent();
    Seat.Place at = seat.place().get();
    assertThat(Math.hypot(at.point().x(), at.point().y())).isCloseTo(3.75, within(0.01));
    assertThat(at.reading().overhang().depthMm()).isCloseTo(0.25, within(0.002));
    // Below the height of contour by √(R² − 3.75²); convergence arcsin of that over R.
    double below = Math.sqrt(R * R - 3.75 * 3.75);
    assertThat(at.reading().belowSurveyLineMm()).isCloseTo(below, within(0.03));
    assertThat(at.reading().convergenceDeg())
        .isCloseTo(Math.toDegrees(Math.asin(below / R)), within(1.0));
    assertThat(at.reading().fitsMm()).isEqualTo(0.25);
  }

  @Test
  void shallowPlaceSaysHowDeepItGets() {
    // A barrel that bulges 0.18 mm and ends.
    double[][] profile = new double[32][];
    profile[0] = new double[] {0, 0};
    for (int i = 0; i < 30; i++) {
      double z = 0.15 * i;
      profile[i + 1] = new double[] {4 - 0.18 * Math.pow((z - 2.175) / 2.175, 2), z};
    }
    profile[31] = new double[] {0, 4.35};
    TriangleMesh mesh = Bodies.revolve(profile, 120);
    Survey survey = Surveys.of(mesh, Vec3.Z);
    Vec3 place = new Vec3(3.9, 0, 0.6);
    int triangle = triangleAt(mesh, place);
    Seat seat = survey.seat(mesh.pointOn(triangle, 1.0 / 3, 1.0 / 3), triangle, 0.25);
    assertThat(seat.place()).isEmpty();
    assertThat(seat.why()).startsWith("deepest here 0.1");
    assertThat(seat.deepestMm()).isCloseTo(0.18, within(0.01));
  }
}
