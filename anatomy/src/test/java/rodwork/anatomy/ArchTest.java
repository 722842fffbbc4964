package rodwork.anatomy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

class ArchTest {
  private final TriangleMesh cast =
      ModelCast.of(ArchFrameFinderTest.closedCasts().findFirst().orElseThrow(), 1).mesh();

  @Test
  void holdsMeshSurfaceAndFrame() {
    Arch arch = Arch.of(MeshTopology.of(cast), Jaw.LOWER, FrameHints.NONE);
    assertThat(arch.mesh()).isSameAs(cast);
    assertThat(arch.surface().hasBase()).isTrue();
    assertThat(arch.frame().jaw()).isEqualTo(Jaw.LOWER);
    assertThat(arch.withFrame(arch.frame().withJaw(Jaw.UPPER)).frame().jaw()).isEqualTo(Jaw.UPPER);
    assertThat(arch.withSurface(AnatomicSurface.whole(cast)).surface().hasBase()).isFalse();
  }

  @Test
  void refusesTheSurfaceOfAnotherMesh() {
    TriangleMesh other = TriangleMesh.of(new double[0], new int[0]);
    ArchFrame frame = new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 0, 0);
    assertThatThrownBy(() -> new Arch(MeshTopology.of(cast), AnatomicSurface.whole(other), frame))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("another mesh");
  }
}
