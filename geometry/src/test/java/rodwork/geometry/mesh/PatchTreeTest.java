package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

/**
 * Truth: the tree over the whole mesh, where the patch is all of it; brute force where it is not.
 */
class PatchTreeTest {
  private static final long SEED = 5;

  @Test
  void allOfAMeshAnswersLikeItsTree() {
    TriangleMesh mesh = bumps();
    TriangleTree whole = TriangleTree.of(mesh);
    PatchTree patch = PatchTree.of(mesh, IntStream.range(0, mesh.triangleCount()).toArray());
    Random random = new Random(SEED);
    for (int i = 0; i < 200; i++) {
      Vec3 p = new Vec3(random.nextDouble(9), random.nextDouble(9), random.nextDouble(-2, 2));
      assertThat(patch.closest(p, 1.0)).isEqualTo(whole.closest(p, 1.0));
      assertThat(patch.firstHit(p, Vec3.Z, 9)).isEqualTo(whole.firstHit(p, Vec3.Z, 9));
    }
  }

  @Test
  void aPatchAnswersWithTheNumbersOfTheWholeMesh() {
    TriangleMesh mesh = bumps();
    int[] some = IntStream.range(0, mesh.triangleCount()).filter(t -> t % 7 == 3).toArray();
    PatchTree patch = PatchTree.of(mesh, some);
    assertThat(patch.triangleCount()).isEqualTo(some.length);
    for (int t : some) {
      SurfacePoint found = patch.closest(mesh.pointOn(t, 0.3, 0.3), 1e-6).orElseThrow();
      assertThat(found.triangle()).isEqualTo(t);
    }
    assertThat(PatchTree.of(mesh, new int[0]).closest(Vec3.ZERO, 1e9)).isEmpty();
  }

  private static TriangleMesh bumps() {
    int n = 30;
    double[] xyz = new double[3 * n * n];
    int[] corners = new int[6 * (n - 1) * (n - 1)];
    int c = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        xyz[3 * (i * n + j)] = 0.3 * i;
        xyz[3 * (i * n + j) + 1] = 0.3 * j;
        xyz[3 * (i * n + j) + 2] = Math.sin(i * 0.7) * Math.cos(j * 0.5);
        if (i + 1 < n && j + 1 < n) {
          int a = i * n + j;
          for (int v : new int[] {a, a + n, a + n + 1, a, a + n + 1, a + 1}) {
            corners[c++] = v;
          }
        }
      }
    }
    return TriangleMesh.of(xyz, corners);
  }
}
