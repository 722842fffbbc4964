package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;
import rodwork.geometry.testing.UndercutTruth;

/** Undercut depth on real arches against an independent program, {@link UndercutTruth}. */
class UndercutReferenceTest {
  @ParameterizedTest
  @CsvSource({
    "lower-35-37-47, ply, a",
    "lower-35-37-47, ply, b",
    "upper-16-23, ply, a",
    "upper-16-23, ply, b",
    "upper-free-end, ply, a",
    "upper-free-end, ply, b",
    "lower-dense, stl, a",
    "lower-dense, stl, b"
  })
  void agreesWithRays(String arch, String ending, String axis) throws IOException {
    Path file = Shared.file("arches/" + arch + "." + ending);
    UndercutTruth reference = UndercutTruth.of(arch, axis);
    TriangleMesh mesh = MeshFiles.read(file, Watch.NONE).toMesh();
    Overhang overhang = Overhangs.of(mesh, reference.axis());
    int deep = 0;
    int near = 0;
    int far = 0;
    int free = 0;
    int freeHere = 0;
    for (UndercutTruth.Row row : reference.rows()) {
      double truth = row.depthMm();
      double depth = overhang.depthAt(nearest(mesh, row.vertex(), row.point()));
      if (truth > 0.05) {
        deep++;
        near += Math.abs(depth - truth) <= 0.03 ? 1 : 0;
        far += Math.abs(depth - truth) > 0.10 ? 1 : 0;
      } else if (truth == 0) {
        free++;
        freeHere += depth < 0.02 ? 1 : 0;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%s.%s: %d deep, %.2f %% within 0.03 mm, %.2f %% off by more than 0.10 mm; %d free, %.2f %%"
            + " below 0.02 mm%n",
        arch,
        axis,
        deep,
        100.0 * near / deep,
        100.0 * far / deep,
        free,
        100.0 * freeHere / free);
    assertThat(deep).isGreaterThan(300);
    assertThat(free).isGreaterThan(500);
    assertThat(near).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * deep));
    assertThat(far).isLessThanOrEqualTo((int) Math.floor(0.01 * deep));
    assertThat(freeHere).isGreaterThanOrEqualTo((int) Math.ceil(0.995 * free));
  }

  /**
   * The vertex of that number, or the one nearest to the place where the file numbers otherwise.
   */
  private static Vec3 nearest(TriangleMesh mesh, int vertex, Vec3 at) {
    if (vertex < mesh.vertexCount() && mesh.vertex(vertex).distance(at) < 1e-4) {
      return mesh.vertex(vertex);
    }
    Vec3 best = mesh.vertex(0);
    for (int v = 1; v < mesh.vertexCount(); v++) {
      if (Math.abs(mesh.x(v) - at.x()) < 1e-4 && mesh.vertex(v).distance(at) < best.distance(at)) {
        best = mesh.vertex(v);
      }
    }
    assertThat(best.distance(at)).isLessThan(1e-4);
    return best;
  }
}
