package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;

class MadeCastTest {
  @ParameterizedTest
  @ValueSource(ints = {2_000, 10_000, 270_000})
  void hasAsManyTrianglesAsAsked(int triangles) {
    assertThat(MadeCast.of(triangles).triangleCount()).isCloseTo(triangles, withPercentage(2));
  }

  @Test
  void isTheSameEachTime() {
    assertThat(MadeCast.of(5000)).isEqualTo(MadeCast.of(5000));
  }

  @Test
  void isOneOpenSheet() {
    TriangleMesh mesh = MadeCast.of(5000);
    // Euler characteristic of a disk: vertices − edges + triangles = 1.
    assertThat(mesh.vertexCount() - MeshTopology.of(mesh).edgeCount() + mesh.triangleCount())
        .isEqualTo(1);
  }

  @Test
  void standsTeethUpWithItsOuterSideOut() {
    TriangleMesh mesh = MadeCast.of(5000);
    Vec3 sum = Vec3.ZERO;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      sum = sum.plus(mesh.doubleAreaNormal(t));
    }
    assertThat(sum.unit().z()).as("areas sum to an upward direction").isGreaterThan(0.9);
  }

  @Test
  void isPartlyHiddenLikeARealCast() {
    byte[] hidden = Queries.hidden(TriangleTree.of(MadeCast.of(20_000)), Vec3.Z);
    int count = 0;
    for (byte h : hidden) {
      count += h;
    }
    assertThat((double) count / hidden.length).isBetween(0.15, 0.5);
  }
}
