package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

class MeshFilesTest {
  /** Numbers that no float and no short decimal holds, with an unreferenced vertex. */
  private static final TriangleMesh ODD =
      TriangleMesh.of(
          new double[] {Math.PI, -1e-7, 1.0 / 3, 10, 0, 0, 0, 1e7 / 3, 0, 0, 0, 10.5, 9, 9, 9},
          new int[] {0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3, 3, 3, 2});

  static Stream<Map.Entry<String, byte[]>> samples() {
    return Samples.all().entrySet().stream();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everyFormatHoldsTheSameTetrahedron(Map.Entry<String, byte[]> sample) {
    RawMesh mesh = Samples.read(sample.getValue());
    assertThat(Samples.soup(mesh)).as(sample.getKey()).isEqualTo(Samples.tetrahedronSoup());
    assertThat(mesh.vertexCount()).isEqualTo(4);
    assertThat(mesh.facts().faces()).isEqualTo(4);
    assertThat(mesh.facts().solids()).isEqualTo(1);
    assertThat(mesh.facts().notes()).isEmpty();
    assertThat(mesh.facts().indexed()).isEqualTo(!sample.getKey().startsWith("stl"));
    if (mesh.facts().indexed()) {
      assertThat(mesh.copyOfCoordinates()).isEqualTo(Samples.XYZ);
      assertThat(mesh.copyOfCorners()).isEqualTo(Samples.CORNERS);
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aStreamOfUnknownLengthAndAFileUnderAnyNameReadTheSame(
      Map.Entry<String, byte[]> sample, @TempDir Path folder) throws Exception {
    RawMesh whole = Samples.read(sample.getValue());
    RawMesh streamed = MeshFiles.read(new ByteArrayInputStream(sample.getValue()), "s", Watch.NONE);
    Path file = Files.write(folder.resolve("scan.dat"), sample.getValue());
    RawMesh fromFile = MeshFiles.read(file, Watch.NONE);
    assertThat(streamed.toMesh()).isEqualTo(whole.toMesh());
    assertThat(fromFile.toMesh()).isEqualTo(whole.toMesh());
    assertThat(fromFile.facts().name()).startsWith("scan.dat");
  }

  @ParameterizedTest
  @ValueSource(strings = {"odd.ply", "odd.obj", "odd.3mf", "ODD.PLY"})
  void indexedFormatsComeBackBitByBit(String name, @TempDir Path folder) {
    Path file = folder.resolve(name);
    MeshFiles.write(file, ODD, Watch.NONE);
    RawMesh back = MeshFiles.read(file, Watch.NONE);
    assertThat(back.toMesh()).isEqualTo(ODD);
    assertThat(back.facts().format()).isEqualTo(MeshFiles.formatOf(file));
  }

  @ParameterizedTest
  @EnumSource(names = {"STL_BINARY", "STL_ASCII"})
  void stlComesBackWeldedInFileOrder(Format format, @TempDir Path folder) {
    Path file = folder.resolve("odd");
    MeshFiles.write(file, format, ODD, Watch.NONE);
    RawMesh back = MeshFiles.read(file, Watch.NONE);
    assertThat(back.facts().format()).isEqualTo(format);
    assertThat(back.vertexCount()).as("the unreferenced vertex is gone").isEqualTo(4);
    for (int t = 0; t < ODD.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        double wanted = ODD.x(ODD.corner(t, k));
        double got = back.x(back.corner(t, k));
        assertThat(got).isEqualTo(format == Format.STL_ASCII ? wanted : (float) wanted);
      }
    }
  }

  @Test
  void oneFormatWrittenReadsLikeAnother(@TempDir Path folder) {
    RawMesh start = Samples.read(Samples.stl());
    double[] soup = Samples.soup(start);
    RawMesh mesh = start;
    for (String name : List.of("a.ply", "b.obj", "c.stl", "d.3mf", "e.stl")) {
      MeshFiles.write(folder.resolve(name), mesh.toMesh(), Watch.NONE);
      mesh = MeshFiles.read(folder.resolve(name), Watch.NONE);
      assertThat(Samples.soup(mesh)).as(name).isEqualTo(soup);
    }
  }

  @Test
  void aWritingThatFailsLeavesTheOldFile(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("keep.ply"), "old");
    Watch stopped =
        new Watch() {
          @Override
          public void progress(String what, double share) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    TriangleMesh large = TriangleMesh.of(new double[30_000], new int[300_000]);
    assertThatThrownBy(() -> MeshFiles.write(file, large, stopped))
        .isInstanceOf(CancellationException.class);
    assertThat(file).hasContent("old");
    assertThat(folder)
        .isDirectoryContaining(path -> path.equals(file))
        .isDirectoryNotContaining("glob:**.part");
    assertThatThrownBy(() -> MeshFiles.read(Samples.stl(), "s", stopped))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void filesThatAreNotThereAreRefused(@TempDir Path folder) {
    Refused.with(
        IoProblem.NO_SUCH_FILE, () -> MeshFiles.read(folder.resolve("none.stl"), Watch.NONE));
    Refused.with(IoProblem.UNREADABLE, () -> MeshFiles.read(folder, Watch.NONE));
    Refused.with(
        IoProblem.UNWRITABLE,
        () -> MeshFiles.write(folder.resolve("no/folder.ply"), ODD, Watch.NONE));
    Refused.with(
        IoProblem.ENDING_UNKNOWN, () -> MeshFiles.write(folder.resolve("a.doc"), ODD, Watch.NONE));
    Refused.with(
        IoProblem.ENDING_UNKNOWN, () -> MeshFiles.write(folder.resolve("ply"), ODD, Watch.NONE));
  }

  @Test
  void contentThatIsNoMeshIsRefused() {
    Refused.file(IoProblem.EMPTY, "");
    Refused.file(IoProblem.UNKNOWN, "%PDF-1.7 and so on\n");
    Refused.file(IoProblem.UNKNOWN, "# only a comment\n");
    Refused.file(IoProblem.UNKNOWN, new byte[1000]);
    byte[] noise = new byte[100_000];
    new java.util.Random(7).nextBytes(noise);
    Refused.file(IoProblem.UNKNOWN, noise);
  }

  @Test
  void readingTellsItsProgress() {
    double[] last = {-1};
    Watch watch =
        new Watch() {
          @Override
          public void progress(String what, double share) {
            assertThat(share).isBetween(last[0], 1.0);
            last[0] = share;
          }

          @Override
          public boolean cancelled() {
            return false;
          }
        };
    MeshFiles.read(Samples.stl(), "s", watch);
    assertThat(last[0]).isEqualTo(1);
  }
}
