package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.geometry.testing.Bodies;

class ComponentsTest {
  @Test
  void twoBodiesAreTwo() {
    TriangleMesh sphere = Bodies.sphere(2, 0.5);
    Components parts = Components.of(MeshTopology.of(Bodies.twoSpheres(2, 6, 0.5)));
    assertThat(parts.count()).isEqualTo(2);
    for (int c = 0; c < 2; c++) {
      assertThat(parts.size(c)).isEqualTo(sphere.triangleCount());
      assertThat(parts.areaMm2(c)).isCloseTo(16 * Math.PI, within(0.5));
    }
    assertThat(parts.of(0)).isZero();
    assertThat(parts.of(2 * sphere.triangleCount() - 1)).isEqualTo(1);
    assertThat(parts.largest()).isZero();
  }

  @Test
  void aSharedVertexDoesNotConnect() {
    TriangleMesh bowTie =
        TriangleMesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, -1, 0, 0, 0, -2, 0},
            new int[] {0, 1, 2, 0, 3, 4});
    Components parts = Components.of(MeshTopology.of(bowTie));
    assertThat(parts.count()).isEqualTo(2);
    assertThat(parts.largest()).isEqualTo(1);
  }

  @Test
  void theThirdTriangleAtAnEdgeBelongs() {
    TriangleMesh fin =
        TriangleMesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1},
            new int[] {0, 1, 2, 1, 0, 3, 0, 1, 4});
    assertThat(Components.of(MeshTopology.of(fin)).count()).isEqualTo(1);
  }

  @Test
  void aCollapsedTriangleStandsAlone() {
    TriangleMesh mesh =
        TriangleMesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {1, 1, 2, 0, 1, 2});
    Components parts = Components.of(MeshTopology.of(mesh));
    assertThat(parts.count()).isEqualTo(2);
    assertThat(parts.areaMm2(0)).isZero();
  }
}
