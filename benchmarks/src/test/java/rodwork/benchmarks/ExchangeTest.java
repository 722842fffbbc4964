package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.mesh.TriangleMesh;

class ExchangeTest {
  @TempDir Path folder;

  @Test
  void whatIsExportedIsReadBackToTheFloat() throws IOException {
    SideBySide.export(folder, "3k");
    TriangleMesh made = MadeCast.of(3000);
    TriangleMesh read = Exchange.readMesh(folder.resolve("mesh.bin"));
    assertThat(read.triangleCount()).isEqualTo(made.triangleCount());
    assertThat(read.vertexCount()).isEqualTo(made.vertexCount());
    assertThat(Exchange.readFloats(folder.resolve("near.bin"))).hasSize(300_000);
    // The mesh came by way of an STL, whose first corner is the first triangle's.
    int first = made.corner(0, 0);
    assertThat(read.x(read.corner(0, 0))).isEqualTo((float) made.x(first));
  }
}
