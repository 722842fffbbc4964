package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/**
 * Survey lines against closed forms. On an ellipsoid with half axes a, b, c the height of contour
 * along p is the plane curve {@code x·p_x/a² + y·p_y/b² + z·p_z/c² = 0}.
 */
class SurveyLinesTest {
  private static final double A = 4.2;
  private static final double B = 3.4;
  private static final double C = 3.8;

  /** A crown-like form: an ellipsoid of a premolar's size, tilted. */
  private static final Vec3 AXIS = new Vec3(0.12, -0.2, 1).unit();

  /** Distance of a point from the true height of contour, to first order along the surface [mm]. */
  private static double error(Vec3 q) {
    Vec3 gradient = new Vec3(q.x() / (A * A), q.y() / (B * B), q.z() / (C * C));
    Vec3 planeNormal = new Vec3(AXIS.x() / (A * A), AXIS.y() / (B * B), AXIS.z() / (C * C));
    Vec3 inSurface = planeNormal.across(gradient.unit());
    return Math.abs(q.dot(planeNormal)) / inSurface.length();
  }

  private static List<Double> errors(Survey survey) {
    List<Double> errors = new ArrayList<>();
    for (SurveyLine line : survey.lines()) {
      for (Vec3 q : line.points()) {
        errors.add(error(q));
      }
    }
    Collections.sort(errors);
    return errors;
  }

  private static double length(Survey survey) {
    return Surveys.length(survey.lines(), SurveyLine.Kind.LINE);
  }

  @Test
  void fineCrownWithin20Micrometres() {
    Survey survey = Surveys.of(Bodies.ellipsoid(A, B, C, 0.2), AXIS);
    List<Double> errors = errors(survey);
    assertThat(errors).hasSizeGreaterThan(100);
    assertThat(errors.getLast()).isLessThanOrEqualTo(0.02);
    assertThat(survey.lines()).hasSize(1);
    assertThat(survey.lines().getFirst().closed()).isTrue();
  }

  @Test
  void coarseCrownWithin150Micrometres() {
    Survey survey = Surveys.of(Bodies.ellipsoid(A, B, C, 1.0), AXIS);
    List<Double> errors = errors(survey);
    assertThat(errors).hasSizeGreaterThan(15);
    assertThat(errors.getLast()).isLessThanOrEqualTo(0.15);
  }

  /** 10 µm of noise on every vertex: 95 % within 0.15 mm, no piece over 2 mm lost or added. */
  @Test
  void roughCrown() {
    double whole = length(Surveys.of(Bodies.ellipsoid(A, B, C, 0.2), AXIS));
    for (long seed = 1; seed <= 5; seed++) {
      TriangleMesh rough = Reshape.roughened(Bodies.ellipsoid(A, B, C, 0.2), 0.01, seed);
      Survey survey = Surveys.of(rough, AXIS);
      List<Double> errors = errors(survey);
      assertThat(errors.get((int) (0.95 * errors.size())))
          .as("seed %d", seed)
          .isLessThanOrEqualTo(0.15);
      assertThat(length(survey)).as("seed %d", seed).isCloseTo(whole, within(2.0));
    }
  }

  /** The far edge of a shadow is no survey line: a floor under a ball has none. */
  @Test
  void farEdgeOfAShadowIsNoLine() {
    TriangleMesh floor = Bodies.box(new Vec3(-9, -9, -7), new Vec3(9, 9, -6), 0.5);
    Survey survey = Surveys.of(Bodies.join(Bodies.sphere(4, 0.25), floor), Vec3.Z);
    for (SurveyLine line : survey.lines()) {
      for (Vec3 q : line.points()) {
        // The floor plate has a line of its own around its walls; nothing on its face.
        boolean wall = Math.max(Math.abs(q.x()), Math.abs(q.y())) > 8.9;
        assertThat(wall || Math.abs(q.z()) < 0.05).as("line through %s", q).isTrue();
      }
    }
    double ball =
        survey.lines().stream()
            .filter(l -> l.points().getFirst().z() > -1)
            .mapToDouble(SurveyLine::lengthMm)
            .sum();
    assertThat(ball).isCloseTo(2 * Math.PI * 4, within(0.3));
  }

  /** A line that lies in another body's shadow is not seen by the rod. */
  @Test
  void shadedLineIsLeftOut() {
    TriangleMesh small = Bodies.moved(Bodies.sphere(2, 0.2), new Vec3(0, 0, -8));
    Survey survey = Surveys.of(Bodies.join(Bodies.sphere(5, 0.25), small), Vec3.Z);
    assertThat(survey.lines())
        .allSatisfy(l -> assertThat(l.points().getFirst().z()).isGreaterThan(-1));
    assertThat(survey.hiddenLines()).isGreaterThanOrEqualTo(1);
  }

  /**
   * A nearly parallel belt, 2 mm high and half a degree off: a band with its two edges stands for
   * the line. The belt is joined to a round top and a waist below it; averaging the normals over
   * 0.25 mm carries the corners of the belt into it by less than 0.4 mm.
   */
  @Test
  void parallelBeltIsABand() {
    List<double[]> profile = new ArrayList<>();
    double r = 4;
    profile.add(new double[] {0, -4});
    for (int i = 0; i < 20; i++) {
      double z = -4 + 0.15 * i;
      profile.add(new double[] {r - 0.25 * (-1 - z), z});
    }
    for (int i = 0; i < 14; i++) {
      profile.add(new double[] {r, -1 + i / 7.0});
    }
    for (int i = 0; i < 40; i++) {
      double t = Math.PI / 80 * i;
      profile.add(new double[] {r * Math.cos(t), 1 + 2 * Math.sin(t)});
    }
    profile.add(new double[] {0, 3});
    Survey survey = Surveys.of(Bodies.revolve(profile.toArray(new double[0][]), 160), Vec3.Z);
    double upper = Surveys.length(survey.lines(), SurveyLine.Kind.BAND_UPPER);
    double lower = Surveys.length(survey.lines(), SurveyLine.Kind.BAND_LOWER);
    assertThat(upper).isCloseTo(2 * Math.PI * r, within(0.5));
    assertThat(lower).isCloseTo(2 * Math.PI * r, within(0.5));
    for (SurveyLine line : survey.lines()) {
      if (line.kind() == SurveyLine.Kind.BAND_UPPER) {
        assertThat(line.points()).allSatisfy(q -> assertThat(q.z()).isBetween(0.6, 1.4));
      }
      if (line.kind() == SurveyLine.Kind.BAND_LOWER) {
        assertThat(line.points()).allSatisfy(q -> assertThat(q.z()).isBetween(-1.4, -0.6));
      }
    }
  }

  @Test
  void turnsWithTheAxis() {
    TriangleMesh mesh = Bodies.ellipsoid(A, B, C, 0.3);
    Vec3 about = new Vec3(1, 2, -1).unit();
    Random random = new Random(7);
    for (int i = 0; i < 3; i++) {
      double degrees = 360 * random.nextDouble();
      Survey turned =
          Surveys.of(Reshape.turned(mesh, about, degrees), Reshape.turned(AXIS, about, degrees));
      assertThat(length(turned))
          .as("turned by %.1f", degrees)
          .isCloseTo(length(Surveys.of(mesh, AXIS)), within(0.01));
    }
  }
}
