package rodwork.survey.plane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.Gauges;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/** Truth: closed forms of cylinders, cones, a ball, and a tilted wall. */
class PlanePatchTest {
  private static final int ROUND = 240;
  private static final double STEP = 0.1;
  private static final double RADIUS = 4;
  private static final double HEIGHT = 5;
  private static final PlaneRules RULES = PlaneRules.SHIPPED;

  /**
   * A wall of revolution, its radius as a function of the height above its foot, under a roof of
   * its own vertices that closes it without turning the normals of its rim.
   */
  private static TriangleMesh wall(DoubleUnaryOperator radius, double height) {
    int rows = (int) Math.round(height / STEP);
    double[] xyz = new double[3 * ((rows + 2) * ROUND + 1)];
    int[] corners = new int[6 * rows * ROUND + 3 * ROUND];
    int c = 0;
    for (int r = 0; r <= rows; r++) {
      double z = height * r / rows;
      for (int k = 0; k < ROUND; k++) {
        double turn = 2 * Math.PI * k / ROUND;
        int v = r * ROUND + k;
        xyz[3 * v] = radius.applyAsDouble(z) * Math.cos(turn);
        xyz[3 * v + 1] = radius.applyAsDouble(z) * Math.sin(turn);
        xyz[3 * v + 2] = z;
        if (r < rows) {
          int right = r * ROUND + (k + 1) % ROUND;
          for (int corner : new int[] {v, right, right + ROUND, v, right + ROUND, v + ROUND}) {
            corners[c++] = corner;
          }
        }
      }
    }
    int roof = (rows + 1) * ROUND;
    for (int k = 0; k < ROUND; k++) {
      int v = roof + k;
      xyz[3 * v] = xyz[3 * (v - ROUND)];
      xyz[3 * v + 1] = xyz[3 * (v - ROUND) + 1];
      xyz[3 * v + 2] = height + 0.001;
      for (int corner : new int[] {v, roof + (k + 1) % ROUND, roof + ROUND}) {
        corners[c++] = corner;
      }
    }
    xyz[3 * (roof + ROUND) + 2] = height + 0.001;
    return TriangleMesh.of(xyz, corners);
  }

  /** The patch on the quarter that faces +X. */
  private static Optional<PlanePatch> patch(TriangleMesh mesh, Vec3 axis) {
    MeshTopology topology = MeshTopology.of(mesh);
    var survey =
        Surveyor.of(topology, AnatomicSurface.whole(mesh), null, SurveyRules.SHIPPED)
            .survey(axis, Gauges.COMMON, Watch.NONE);
    int[] quarter =
        IntStream.range(0, mesh.triangleCount() - ROUND)
            .filter(
                t -> {
                  Vec3 q = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
                  return q.x() > Math.abs(q.y());
                })
            .toArray();
    return PlanePatch.of(survey, PlanePatch.normals(topology, RULES), quarter, Vec3.X, RULES);
  }

  private static TriangleMesh cone(double convergenceDeg) {
    double lean = Math.tan(Math.toRadians(convergenceDeg));
    return wall(z -> RADIUS + lean * (HEIGHT - z), HEIGHT);
  }

  @Test
  void aCylinderIsParallelOverItsHeightAndTheWidthOfItsQuarter() {
    PlanePatch patch = patch(cone(0), Vec3.Z).orElseThrow();
    assertThat(patch.heightMm()).isCloseTo(HEIGHT, within(1e-6));
    assertThat(patch.angleDeg()).isCloseTo(0, within(1e-6));
    assertThat(patch.widthMm()).isCloseTo(2 * RADIUS * Math.sin(Math.PI / 4), within(0.12));
    assertThat(patch.areaMm2()).isCloseTo(RADIUS * Math.PI / 2 * HEIGHT, within(0.3));
  }

  @Test
  void aConeWithinTheToleranceCountsWholeAndOneBeyondItNotAtAll() {
    PlanePatch patch = patch(cone(2), Vec3.Z).orElseThrow();
    assertThat(patch.heightMm()).isCloseTo(HEIGHT, within(1e-6));
    assertThat(patch.angleDeg()).isCloseTo(2, within(0.02));
    assertThat(patch(cone(4), Vec3.Z)).isEmpty();
  }

  @Test
  void anUndercutConeCountsUntilItsUndercutIsTooDeep() {
    for (double angle : new double[] {0.5, 1, 2}) {
      double expected = 0.02 / Math.tan(Math.toRadians(angle));
      assertThat(patch(cone(-angle), Vec3.Z).orElseThrow().heightMm())
          .as("%s° undercut", angle)
          .isCloseTo(expected, within(0.01));
    }
  }

  @Test
  void aBallIsParallelInABandAboutItsEquator() {
    // From 3° above the equator to 3° below it, where the undercut is R(1 − cos 3°) = 0.005 mm.
    double band = 2 * RADIUS * Math.sin(Math.toRadians(3));
    TriangleMesh ball = wall(z -> Math.sqrt(RADIUS * RADIUS - Math.pow(z - 2, 2)), 4);
    PlanePatch patch = patch(ball, Vec3.Z).orElseThrow();
    assertThat(patch.heightMm()).isCloseTo(band, within(0.01));
    assertThat(patch.angleDeg()).isCloseTo(0, within(0.05));
  }

  @Test
  void aTiltOfThePathTurnsTheWallAway() {
    // Tilted about Y by 2°, the wall that faces +X converges by 2°.
    double rad = Math.toRadians(2);
    Vec3 axis = new Vec3(Math.sin(rad), 0, Math.cos(rad));
    PlanePatch patch = patch(cone(0), axis).orElseThrow();
    assertThat(patch.angleDeg()).isBetween(1.7, 2.0);
    assertThat(patch.heightMm()).isCloseTo(HEIGHT * Math.cos(rad), within(0.01));
    double more = Math.toRadians(6);
    Optional<PlanePatch> turned = patch(cone(0), new Vec3(Math.sin(more), 0, Math.cos(more)));
    // At azimuth φ the wall leans by asin(sin 6°·cos φ): within 3° beyond φ = 60°, off the quarter.
    assertThat(turned).isEmpty();
  }
}
