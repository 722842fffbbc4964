package rodwork.survey.plane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/**
 * Truth: closed forms of crowns of revolution whose ridge is known, leaning towards +X. Their roofs
 * fall to a fossa, by less than the crown leans in the worst case, as on a tipped molar.
 */
class PlaneCutterTest {
  private static final int ROUND = 240;
  private static final double BELOW = 0.5;
  private static final double HEIGHT = 3;
  private static final double FOSSA = Math.tan(Math.toRadians(12));
  private static final double[] LEANS_DEG = {-25, -16, -8, 0, 3, 8, 16, 20, 25, 30};

  private static final double RADIUS = 4.5;
  private static final double LENGTH = 7;
  private static final double ROUNDING = 0.8;

  private static final double ACROSS = 4.8;
  private static final double ALONG = 6;
  private static final double RIM = 3.5;

  /** The section on the +X side of a crown about z that leans by an angle. */
  private static PlaneSection section(List<double[]> profile, double leanDeg) {
    TriangleMesh crown = Bodies.revolve(profile.toArray(new double[0][]), ROUND);
    TriangleMesh mesh = Reshape.turned(crown, Vec3.Y, leanDeg);
    Vec3 axis = Reshape.turned(Vec3.Z, Vec3.Y, leanDeg);
    // As the sites of a tooth do it: at what sticks out most.
    Vec3 most = mesh.vertex(0);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      most = mesh.vertex(v).x() > most.x() ? mesh.vertex(v) : most;
    }
    // Off the vertices by a hair: a section through a row of them is left to chance.
    Vec3 place = new Vec3(most.x(), 1e-4, most.z());
    return new PlaneCutter(MeshTopology.of(mesh), TriangleTree.of(mesh), Vec3.Z)
        .at(place, Vec3.X, axis, t -> !facesDown(mesh, t, axis))
        .orElseThrow();
  }

  /** The body's underside, which stands for the gum. */
  private static boolean facesDown(TriangleMesh mesh, int triangle, Vec3 axis) {
    Vec3 normal = mesh.doubleAreaNormal(triangle);
    return normal.dot(axis) < -0.9 * normal.length();
  }

  private static PlaneSection.Cut cut(PlaneSection section) {
    return section.cut(Vec3.Z, Vec3.X, BELOW, HEIGHT).orElseThrow();
  }

  /** A straight wall that is rounded into a crest by an arc, and falls behind it to the fossa. */
  private static List<double[]> roundedCylinder() {
    List<double[]> profile = new ArrayList<>();
    profile.add(new double[] {0, 0});
    profile.add(new double[] {RADIUS, 0});
    for (int i = 1; i <= 60; i++) {
      profile.add(new double[] {RADIUS, (LENGTH - ROUNDING) * i / 60});
    }
    for (int i = 1; i <= 180; i++) {
      double turn = Math.toRadians(0.5 * i);
      profile.add(
          new double[] {
            RADIUS - ROUNDING + ROUNDING * Math.cos(turn), LENGTH - ROUNDING * (1 - Math.sin(turn))
          });
    }
    profile.add(new double[] {0, LENGTH - FOSSA * (RADIUS - ROUNDING)});
    return profile;
  }

  @Test
  void aLeaningCylinderTakesTheWedgeOfItsLean() {
    for (double lean : LEANS_DEG) {
      PlaneSection section = section(roundedCylinder(), lean);
      double a = Math.toRadians(lean);
      // About the middle of the arc, t and h: the crest stands along the tooth's axis.
      double crest = ROUNDING * Math.cos(a);
      assertThat(section.ridge().z())
          .as("ridge at %s°", lean)
          .isCloseTo(
              -(RADIUS - ROUNDING) * Math.sin(a) + (LENGTH - ROUNDING) * Math.cos(a) + crest,
              within(0.006));
      double top = Math.asin((crest - BELOW) / ROUNDING);
      double atTop = top >= -a ? ROUNDING * Math.cos(top) : wall(a, BELOW - crest);
      double atBottom = wall(a, HEIGHT + BELOW - crest);
      double most = a >= 0 ? ROUNDING : Math.max(atTop, atBottom);
      PlaneSection.Cut cut = cut(section);
      assertThat(cut.greatestMm())
          .as("enamel at %s°", lean)
          .isCloseTo(most - Math.min(atTop, atBottom), within(0.006));
      assertThat(cut.angleDeg())
          .as("chord at %s°", lean)
          .isCloseTo(Math.toDegrees(Math.atan2(atBottom - atTop, HEIGHT)), within(0.1));
    }
  }

  /** How far out the wall stands, this far below the middle of the arc. */
  private static double wall(double lean, double belowMm) {
    double below = belowMm - ROUNDING * Math.sin(lean);
    return ROUNDING * Math.cos(lean) - below * Math.tan(lean);
  }

  /** The lower two thirds of an ellipsoid and more, cut off at a rim, with a fossa. */
  private static List<double[]> ellipsoid() {
    List<double[]> profile = new ArrayList<>();
    double top = Math.asin(RIM / ALONG);
    for (int i = 0; i <= 240; i++) {
      double angle = -Math.PI / 2 + (top + Math.PI / 2) * i / 240;
      double rho = i == 0 ? 0 : ACROSS * Math.cos(angle);
      profile.add(new double[] {rho, ALONG * Math.sin(angle)});
    }
    profile.add(new double[] {0, RIM - FOSSA * ACROSS * Math.cos(top)});
    return profile;
  }

  @Test
  void aLeaningEllipsoidTakesWhatTheEllipseSays() {
    double rim = Math.asin(RIM / ALONG);
    for (double lean : LEANS_DEG) {
      PlaneSection section = section(ellipsoid(), lean);
      double a = Math.toRadians(lean);
      // A point of the ellipse at the angle θ, turned by the lean: h = A·sin(θ − δ).
      double size = Math.hypot(ACROSS * Math.sin(a), ALONG * Math.cos(a));
      double delta = Math.atan2(ACROSS * Math.sin(a), ALONG * Math.cos(a));
      double ridge = size * Math.sin(rim - delta);
      assertThat(section.ridge().z()).as("ridge at %s°", lean).isCloseTo(ridge, within(0.006));
      double from = delta + Math.asin((ridge - BELOW - HEIGHT) / size);
      double to = delta + Math.asin((ridge - BELOW) / size);
      double widest = Math.clamp(Math.atan2(ALONG * Math.sin(a), ACROSS * Math.cos(a)), from, to);
      double least = Math.min(out(from, a), out(to, a));
      PlaneSection.Cut cut = cut(section);
      assertThat(cut.greatestMm())
          .as("enamel at %s°", lean)
          .isCloseTo(out(widest, a) - least, within(0.006));
      assertThat(cut.angleDeg())
          .as("chord at %s°", lean)
          .isCloseTo(Math.toDegrees(Math.atan2(out(from, a) - out(to, a), HEIGHT)), within(0.1));
    }
  }

  private static double out(double theta, double lean) {
    return ACROSS * Math.cos(theta) * Math.cos(lean) + ALONG * Math.sin(theta) * Math.sin(lean);
  }

  @Test
  void aWornTopWithoutAFossaHasItsRidgeWhereTheWallTurns() {
    List<double[]> profile = new ArrayList<>(roundedCylinder());
    profile.removeLast();
    profile.add(new double[] {0, LENGTH + 0.3});
    for (double lean : new double[] {-20, 0, 20}) {
      double a = Math.toRadians(lean);
      double turn = RADIUS - ROUNDING + ROUNDING * Math.sqrt(0.5);
      double up = LENGTH - ROUNDING + ROUNDING * Math.sqrt(0.5);
      assertThat(section(profile, lean).ridge().z())
          .as("turn at %s°", lean)
          .isCloseTo(-turn * Math.sin(a) + up * Math.cos(a), within(0.03));
    }
  }
}
