package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;

class ConvertCommandTest {
  private static final TriangleMesh TETRAHEDRON =
      TriangleMesh.of(
          new double[] {0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10},
          new int[] {0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3});

  @TempDir Path folder;

  @Test
  void theTrianglesStayTheSame() {
    Path from = folder.resolve("a.stl");
    Path to = folder.resolve("b.stl");
    MeshFiles.write(from, TETRAHEDRON, Watch.NONE);
    Shell shell = Shell.run("convert", from.toString(), to.toString());
    assertThat(shell.err()).isEmpty();
    assertThat(shell.code()).isEqualTo(0);
    assertThat(shell.out()).isEqualToNormalizingNewlines(to + ": 4 vertices, 4 triangles\n");
    assertThat(MeshFiles.read(to, Watch.NONE).toMesh().triangleCount()).isEqualTo(4);
  }

  @Test
  void aMissingFileIsRefused() {
    Path missing = folder.resolve("missing.stl");
    Shell shell = Shell.run("convert", missing.toString(), folder.resolve("b.stl").toString());
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err())
        .isEqualToNormalizingNewlines(
            "rodwork: no-such-file: "
                + missing
                + ": there is no such file.\nCheck the name and the folder.\n");
  }

  @Test
  void anUnknownEndingIsRefusedBeforeAnythingIsRead() throws IOException {
    Path to = folder.resolve("b.xyz");
    Shell shell = Shell.run("convert", folder.resolve("missing.stl").toString(), to.toString());
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err()).startsWith("rodwork: ending-unknown: ");
    assertThat(Files.exists(to)).isFalse();
  }
}
