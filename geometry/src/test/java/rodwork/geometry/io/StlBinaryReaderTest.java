package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.Watch;

class StlBinaryReaderTest {
  @Test
  void aDenseArchIsReadWeldedAndWrittenBack(@TempDir Path folder) throws Exception {
    Path arch = SharedData.arches().resolve("lower-dense.stl");
    Assumptions.assumeTrue(Files.exists(arch), "skipped: shared arches are not here");
    RawMesh mesh = MeshFiles.read(arch, Watch.NONE);
    assertThat(mesh.triangleCount()).isEqualTo(271_567);
    assertThat(mesh.vertexCount()).isLessThan(140_000);
    Path copy = folder.resolve("copy.stl");
    MeshFiles.write(copy, mesh.toMesh(), Watch.NONE);
    RawMesh again = MeshFiles.read(copy, Watch.NONE);
    assertThat(again.toMesh()).isEqualTo(mesh.toMesh());
  }
}
