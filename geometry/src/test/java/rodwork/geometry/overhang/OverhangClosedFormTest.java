package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;

/** Undercut depth against closed forms; truth: the formula beside each test, mark 0.01 mm. */
class OverhangClosedFormTest {
  private static final double MARK_MM = 0.01;
  private static final double EDGE_MM = 0.2;

  /** Compares every vertex for which the formula gives a number; asserts how many there were. */
  private static void check(
      TriangleMesh mesh, Vec3 axis, ToDoubleFunction<Vec3> depth, int atLeast) {
    Overhang overhang = Overhangs.of(mesh, axis);
    int compared = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double truth = depth.applyAsDouble(mesh.vertex(v));
      if (!Double.isNaN(truth)) {
        assertThat(overhang.depth(v))
            .as("vertex %d at %s", v, mesh.vertex(v))
            .isCloseTo(Math.min(truth, 4), within(MARK_MM));
        compared++;
      }
    }
    assertThat(compared).isGreaterThanOrEqualTo(atLeast);
  }

  private static double rho(Vec3 p) {
    return Math.hypot(p.x(), p.y());
  }

  /** Below its equator a sphere of radius R has u = R − ρ. */
  @Test
  void sphere() {
    double r = 4;
    check(Bodies.sphere(r, EDGE_MM), Vec3.Z, p -> p.z() < 0 ? r - rho(p) : 0, 5000);
  }

  @Test
  void sphereAlongAnyAxis() {
    double r = 4;
    Vec3 axis = new Vec3(0.4, -0.7, 0.3).unit();
    check(
        Bodies.sphere(r, EDGE_MM),
        axis,
        p -> p.dot(axis) < 0 ? r - p.across(axis).length() : 0,
        5000);
  }

  /** The wall of an inverted cone stands back from its top edge by top radius − ρ. */
  @Test
  void invertedCone() {
    check(Bodies.cone(2, 5, 6, EDGE_MM), Vec3.Z, p -> p.z() > 5.999 ? 0 : 5 - rho(p), 5000);
  }

  /** Below its equator a torus is as deep as its nearer equator is far. */
  @Test
  void torus() {
    check(
        Bodies.torus(8, 2.5, EDGE_MM),
        Vec3.Z,
        p -> p.z() < -1e-9 ? Math.min(10.5 - rho(p), rho(p) - 5.5) : 0,
        10000);
  }

  /**
   * A cylinder tilted by t: on the line of its wall that hangs over most, a point s below the top
   * edge has u = s·sin t.
   */
  @Test
  void tiltedCylinder() {
    double t = Math.toRadians(20);
    Vec3 axis = new Vec3(Math.sin(t), 0, Math.cos(t));
    check(
        Bodies.cylinder(4, 8, EDGE_MM),
        axis,
        p -> Math.abs(p.y()) < 1e-9 && p.x() < -3.999 ? (8 - p.z()) * Math.sin(t) : Double.NaN,
        40);
  }

  /** Floor under a ledge: u is the way to the ledge's edge. */
  @Test
  void step() {
    check(
        Bodies.step(3, 4, 0.5),
        Vec3.Z,
        p ->
            Math.abs(p.z()) < 1e-9 && p.x() >= 0 && Math.abs(p.y()) < 4.5
                ? Math.max(0, 3 - p.x())
                : Double.NaN,
        200);
  }

  @Test
  void wallParallelToTheAxisHasNoUndercut() {
    check(Bodies.parallelWall(6, 0.5), Vec3.Z, p -> p.z() > 0 ? 0 : Double.NaN, 1000);
  }

  /**
   * Two overlapping spheres: below their equators the free places nearest to a point are on its own
   * sphere's equator, or where both equators cross when that lies under the neighbour.
   */
  @Test
  void neighboursThatShadeEachOther() {
    double r = 4;
    double apart = 6.5;
    double crossY = Math.sqrt(r * r - apart * apart / 4);
    check(
        Bodies.twoSpheres(r, apart, EDGE_MM),
        Vec3.Z,
        p -> {
          if (p.z() > -0.2) {
            return Double.NaN;
          }
          double best = Math.hypot(p.x(), Math.abs(p.y()) - crossY);
          for (int side = -1; side <= 1; side += 2) {
            double cx = side * apart / 2;
            double dx = p.x() - cx;
            double d = Math.hypot(dx, p.y());
            if (d == 0) {
              continue;
            }
            double qx = cx + dx / d * r;
            double qy = p.y() / d * r;
            if (Math.hypot(qx + cx, qy) >= r) {
              best = Math.min(best, Math.abs(r - d));
            }
          }
          return best;
        },
        6000);
  }

  /** Along a direction a sphere is as deep as the chord of its equator is long from there. */
  @Test
  void depthAlongADirection() {
    double r = 4;
    TriangleMesh mesh = Bodies.sphere(r, EDGE_MM);
    Overhang overhang = Overhangs.of(mesh, Vec3.Z);
    for (int v = 0; v < mesh.vertexCount(); v += 7) {
      Vec3 p = mesh.vertex(v);
      if (p.z() > -0.3) {
        continue;
      }
      double b = p.x();
      double chord = -b + Math.sqrt(b * b + r * r - rho(p) * rho(p));
      assertThat(overhang.depthAlong(p, Vec3.X)).isCloseTo(Math.min(4, chord), within(MARK_MM));
    }
  }

  @Test
  void contactIsTheHeightOfContour() {
    Overhang overhang = Overhangs.of(Bodies.sphere(4, EDGE_MM), Vec3.Z);
    OverhangReading reading = overhang.read(new Vec3(3, 0, -Math.sqrt(7)));
    assertThat(reading.contact().z()).isCloseTo(0, within(0.1));
    assertThat(reading.free().distance(new Vec3(4, 0, -Math.sqrt(7)))).isLessThan(0.05);
    assertThat(reading.flagged()).isFalse();
  }
}
