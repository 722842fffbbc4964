package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Watch;

class StlBinaryReaderTest {
  @Test
  void aHeaderThatSaysSolidIsStillBinary() {
    byte[] stl = Samples.stl();
    System.arraycopy(Samples.bytes("solid made by someone"), 0, stl, 0, 21);
    assertThat(Samples.read(stl).facts().format()).isEqualTo(Format.STL_BINARY);
    byte[] wrongCount = withCount(stl, 2);
    assertThat(Samples.read(wrongCount).facts().format()).isEqualTo(Format.STL_BINARY);
  }

  @Test
  void aCountThatIsWrongIsNotBelieved() {
    for (int announced : new int[] {0, 3, 5, 1 << 30, -1}) {
      RawMesh mesh = Samples.read(withCount(Samples.stl(), announced));
      assertThat(Samples.soup(mesh)).isEqualTo(Samples.tetrahedronSoup());
      assertThat(mesh.facts().announcedFaces()).hasValue(Integer.toUnsignedLong(announced));
      assertThat(mesh.facts().notes()).hasSize(1);
      assertThat(mesh.facts().notes().getFirst()).contains("holds 4;");
    }
  }

  @Test
  void aFileCutOffInsideATriangleIsRefused() {
    Refused.file(IoProblem.STL_CUT_OFF, Samples.cut(Samples.stl(), 84 + 120));
    Refused.file(IoProblem.UNKNOWN, Samples.cut(Samples.stl(), 84 + 30));
  }

  @Test
  void whatStandsBehindTheTrianglesIsLeftOut() {
    byte[] trailer = Arrays.copyOf(Samples.stl(), 84 + 200 + 77);
    Arrays.fill(trailer, 84 + 200, trailer.length, (byte) 0x41);
    RawMesh mesh = Samples.read(trailer);
    assertThat(Samples.soup(mesh)).isEqualTo(Samples.tetrahedronSoup());
    assertThat(mesh.vertexCount()).isEqualTo(4);
    assertThat(mesh.facts().faces()).isEqualTo(4);
    assertThat(mesh.facts().notes())
        .containsExactly("Behind the last triangle stand 77 bytes of something else; left out.");
  }

  @Test
  void minusZeroIsZeroAndNotANumberIsKept() {
    byte[] stl = Samples.stl();
    ByteBuffer.wrap(stl).order(ByteOrder.LITTLE_ENDIAN).putFloat(84 + 12, -0.0f);
    assertThat(Samples.read(stl).vertexCount()).isEqualTo(4);
    ByteBuffer.wrap(stl).order(ByteOrder.LITTLE_ENDIAN).putFloat(84 + 12, Float.NaN);
    RawMesh mesh = Samples.read(stl);
    assertThat(mesh.triangleCount()).isEqualTo(4);
    assertThat(mesh.vertexCount()).isEqualTo(5);
    assertThat(mesh.allFinite()).isFalse();
  }

  @Test
  void aDenseArchIsReadAndWelded() {
    Path arch = SharedData.arches().resolve("lower-dense.stl");
    Assumptions.assumeTrue(Files.exists(arch), "skipped: no shared arches at " + arch);
    RawMesh mesh = MeshFiles.read(arch, Watch.NONE);
    assertThat(mesh.triangleCount()).isEqualTo(271_567);
    assertThat(mesh.facts().notes()).isEmpty();
    double[] xyz = mesh.copyOfCoordinates();
    long different =
        java.util.stream.IntStream.range(0, xyz.length / 3)
            .mapToObj(v -> xyz[3 * v] + " " + xyz[3 * v + 1] + " " + xyz[3 * v + 2])
            .distinct()
            .count();
    assertThat(different).as("no place has two vertices").isEqualTo(mesh.vertexCount());
  }

  private static byte[] withCount(byte[] stl, int count) {
    byte[] copy = stl.clone();
    ByteBuffer.wrap(copy).order(ByteOrder.LITTLE_ENDIAN).putInt(80, count);
    return copy;
  }
}
