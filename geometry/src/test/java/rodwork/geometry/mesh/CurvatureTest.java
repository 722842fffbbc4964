package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/** Truth: the principal curvatures of sphere, cylinder and torus in closed form. */
class CurvatureTest {
  private static Curvature of(TriangleMesh mesh, double scale) {
    return Curvature.of(mesh, VertexNormals.of(MeshTopology.of(mesh), scale));
  }

  @Test
  void sphereHasOneOverItsRadius() {
    for (double scale : new double[] {0, 0.25}) {
      TriangleMesh mesh = Bodies.sphere(4, 0.25);
      Curvature curvature = of(mesh, scale);
      for (int v = 0; v < mesh.vertexCount(); v++) {
        assertThat(curvature.greatest(v)).isCloseTo(0.25, within(0.005));
        assertThat(curvature.least(v)).isCloseTo(0.25, within(0.005));
      }
    }
  }

  @Test
  void hollowsAreNegative() {
    TriangleMesh hollow = Reshape.flipped(Bodies.sphere(4, 0.3), t -> true);
    assertThat(of(hollow, 0).mean(5)).isCloseTo(-0.25, within(0.005));
    assertThat(of(hollow, 0).strongest(5)).isCloseTo(0.25, within(0.005));
  }

  @Test
  void cylinderIsStraightAlongItsAxis() {
    TriangleMesh mesh = Bodies.cylinder(3, 8, 0.3);
    Curvature curvature = of(mesh, 0);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      if (mesh.z(v) > 1 && mesh.z(v) < 7) {
        assertThat(curvature.greatest(v)).isCloseTo(1.0 / 3, within(0.005));
        assertThat(curvature.least(v)).isCloseTo(0, within(0.005));
      }
    }
  }

  @Test
  void torusIsSaddleShapedInside() {
    TriangleMesh mesh = Bodies.torus(6, 2, 0.25);
    Curvature curvature = of(mesh, 0.25);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      double cos = (Math.hypot(p.x(), p.y()) - 6) / 2;
      assertThat(curvature.greatest(v)).isCloseTo(0.5, within(0.01));
      assertThat(curvature.least(v)).isCloseTo(cos / (6 + 2 * cos), within(0.01));
    }
  }

  @Test
  void noiseHardlyShowsWithAveragedNormals() {
    TriangleMesh mesh = Reshape.roughened(Bodies.sphere(4, 0.2), 0.01, 31);
    Curvature curvature = of(mesh, VertexNormals.DEFAULT_SCALE_MM);
    double sum = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      sum += Math.pow(curvature.mean(v) - 0.25, 2);
    }
    assertThat(Math.sqrt(sum / mesh.vertexCount())).as("deviation, seed 31").isLessThan(0.05);
  }

  @Test
  void normalsMustBeOfTheMesh() {
    VertexNormals other = VertexNormals.of(MeshTopology.of(Bodies.sphere(1, 1)), 0);
    assertThatThrownBy(() -> Curvature.of(Bodies.sphere(1, 0.2), other))
        .hasMessageContaining("normals for");
  }
}
