package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;

/** Against closed forms: great circles of a sphere, the developed wall of a cylinder. */
class SurfaceDistanceTest {
  @Test
  void onASphereItIsTheGreatCircle() {
    double radius = 8;
    TriangleMesh mesh = Bodies.sphere(radius, 0.4);
    Vec3 pole = mesh.vertex(0);
    SurfaceDistance d = from(mesh, pole);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double truth =
          radius * Math.acos(Math.clamp(mesh.vertex(v).dot(pole) / (radius * radius), -1, 1));
      assertThat(d.at(v)).isCloseTo(truth, within(0.03 * truth + 0.02));
    }
  }

  @Test
  void onACylinderItIsTheStraightLineOfTheDevelopedWall() {
    double radius = 6;
    TriangleMesh mesh = Bodies.cylinder(radius, 12, 0.3);
    Vec3 start = new Vec3(radius, 0, middle(mesh));
    SurfaceDistance d = from(mesh, start);
    int compared = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      double along = p.z() - start.z();
      double round = radius * Math.abs(Math.atan2(p.y(), p.x()));
      if (Math.abs(Math.hypot(p.x(), p.y()) - radius) < 1e-6 && Math.abs(along) < 4 && round < 10) {
        double truth = Math.hypot(along, round);
        assertThat(d.at(v)).isCloseTo(truth, within(0.03 * truth + 0.02));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(500);
  }

  @Test
  void beyondTheMostItIsInfinite() {
    TriangleMesh mesh = Bodies.sphere(8, 0.5);
    Vec3 pole = mesh.vertex(0);
    SurfaceDistance d =
        SurfaceDistance.from(mesh, List.of(TriangleTree.of(mesh).closest(pole).orElseThrow()), 5);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      assertThat(d.at(v) <= 5 || Double.isInfinite(d.at(v))).isTrue();
    }
    // Corners too, where rounding makes a share of another corner a little less than nothing.
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (double[] share : new double[][] {{0, 0}, {1, 0}, {0, 1}, {0.5, 0.5}, {0.3, 0.3}}) {
        double at = d.at(new SurfacePoint(t, mesh.pointOn(t, share[0], share[1]), 0));
        assertThat(at).isNotNaN().isGreaterThanOrEqualTo(0);
      }
    }
  }

  private static double middle(TriangleMesh mesh) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      low = Math.min(low, mesh.z(v));
      high = Math.max(high, mesh.z(v));
    }
    return (low + high) / 2;
  }

  private static SurfaceDistance from(TriangleMesh mesh, Vec3 point) {
    return SurfaceDistance.from(
        mesh, List.of(TriangleTree.of(mesh).closest(point).orElseThrow()), 100);
  }
}
