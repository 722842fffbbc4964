package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.Watch;

class PlyReaderTest {
  private final String text = Samples.plyText();

  @Test
  void coloursOfVerticesAndFacesAreKept() {
    for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
      RawMesh mesh = Samples.read(Samples.ply(order));
      assertThat(mesh.vertexColour(3)).isEqualTo(0xFFFF1E00);
      assertThat(mesh.faceColour(2)).isEqualTo(0xFF010202);
    }
    RawMesh shares =
        Samples.read(
            """
            ply
            format ascii 1.0
            element vertex 4
            property float x
            property float y
            property float z
            property float red
            property float green
            property float blue
            property float alpha
            element face 1
            property list uchar int vertex_indices
            end_header
            0 0 0 1 0 0 1
            10 0 0 0 1 0 0.5
            0 10 0 0 0 1 0
            0 0 10.5 2 -1 nan 1
            3 0 2 1
            """);
    assertThat(shares.vertexColour(0)).isEqualTo(0xFFFF0000);
    assertThat(shares.vertexColour(1)).isEqualTo(0x8000FF00);
    assertThat(shares.vertexColour(3)).isEqualTo(0xFFFF0000);
    assertThat(shares.hasFaceColours()).isFalse();
  }

  @Test
  void polygonsAreCutAndEachTriangleKeepsTheColour() {
    RawMesh mesh =
        Samples.read(
            """
            ply
            format ascii 1.0
            element face 3
            property list uchar int vertex_indices
            property uchar red
            property uchar green
            property uchar blue
            element vertex 5
            property float x
            property float y
            property float z
            end_header
            5 0 1 2 3 4 9 0 0
            2 0 1 8 0 0
            3 0 1 2 7 0 0
            0 0 0
            4 0 0
            4 4 0
            2 1 0
            0 4 0
            """);
    assertThat(mesh.triangleCount()).isEqualTo(4);
    assertThat(mesh.facts().polygonsTriangulated()).isEqualTo(1);
    assertThat(mesh.facts().recordsDropped()).isEqualTo(1);
    assertThat(mesh.facts().faces()).isEqualTo(3);
    assertThat(mesh.faceColour(2)).isEqualTo(0xFF090000);
    assertThat(mesh.faceColour(3)).isEqualTo(0xFF070000);
  }

  @Test
  void otherElementsAndWhatStandsBehindAreToldAndLeftOut() {
    RawMesh mesh =
        Samples.read(
            text.replace("end_header\n", "element edge 1\nproperty int a\nend_header\n")
                + "17\nsomething else\n");
    assertThat(mesh.facts().notes())
        .containsExactly(
            "The element edge was left out.",
            "Behind the last record stand more lines of something else; left out.");
  }

  @Test
  void brokenSisters() {
    Refused.file(IoProblem.PLY_CUT_OFF, text.substring(0, text.length() - 10));
    Refused.file(IoProblem.PLY_LINE_TOO_LONG, text.replace("vertex 4", "vertex 400000000000"));
    Refused.file(IoProblem.PLY_CUT_OFF, text.replace("face 4", "face 5"));
    byte[] binary = Samples.ply(ByteOrder.LITTLE_ENDIAN);
    Refused.file(IoProblem.PLY_CUT_OFF, Samples.cut(binary, binary.length - 30));
    Refused.file(IoProblem.PLY_HEADER_CUT_OFF, text.substring(0, 60));
    Refused.file(IoProblem.PLY_HEADER, text.replace("property float y", "property text y"));
    Refused.file(IoProblem.PLY_HEADER, text.replace("vertex 4", "vertex -4"));
    Refused.file(IoProblem.PLY_HEADER, text.replace("format ascii 1.0", "format ternary 1.0"));
    Refused.file(IoProblem.PLY_HEADER, text.replace("format ascii 1.0\n", ""));
    Refused.file(IoProblem.PLY_HEADER, text.replace("uchar int", "float int"));
    Refused.file(IoProblem.PLY_NO_PROPERTY, text.replace("property float y", "property float q"));
    Refused.file(IoProblem.PLY_NO_PROPERTY, text.replace("vertex_indices", "corner_list"));
    Refused.file(IoProblem.PLY_LINE_TOO_LONG, text.replace("10 0 0\n", "10 0 0 7\n"));
    Refused.file(IoProblem.LINE_TOO_SHORT, text.replace("10 0 0\n", "10 0\n"));
    Refused.file(IoProblem.NO_NUMBER, text.replace("10.5", "ten"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("3 1 2 3", "3 1 2 4"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("3 1 2 3", "3 1 2 -1"));
    Refused.file(IoProblem.PLY_WHOLE, text.replace("3 1 2 3", "3 1 2 2.5"));
    Refused.file(IoProblem.PLY_LIST, text.replace("3 1 2 3", "-3 1 2 3"));
    Refused.file(
        IoProblem.NO_TRIANGLES, text.replace("face 4", "face 0").replaceAll("(?m)^3 .*\n", ""));
    Refused.file(
        IoProblem.POLYGON_TOO_LARGE,
        text.replace("uchar int", "int int").replace("3 1 2 3", "5000" + " 1".repeat(5000)));
  }

  @Test
  void furtherValuesAreWrittenAndTheMeshComesBack(@TempDir Path folder) throws Exception {
    RawMesh mesh = Samples.read(text);
    Path file = folder.resolve("field.ply");
    MeshFiles.writePly(
        file,
        mesh.toMesh(),
        List.of(
            new VertexProperty.OfFloat("undercut_mm", new float[] {0, 0.25f, 0.5f, 0.75f}),
            new VertexProperty.OfByte("flags", new byte[] {0, 1, 2, (byte) 255})),
        Watch.NONE);
    byte[] written = Files.readAllBytes(file);
    String head = new String(written, java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(head)
        .contains("property float z\nproperty float undercut_mm\nproperty uchar flags\n");
    int data = head.indexOf("end_header\n") + 11;
    java.nio.ByteBuffer second =
        java.nio.ByteBuffer.wrap(written, data + 17, 17).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(second.getFloat()).isEqualTo(10f);
    assertThat(second.getFloat(data + 17 + 12)).isEqualTo(0.25f);
    assertThat(written[data + 17 + 16]).isEqualTo((byte) 1);
    assertThat(MeshFiles.read(file, Watch.NONE).toMesh()).isEqualTo(mesh.toMesh());
  }

  @Test
  void everyArchIsRead() throws Exception {
    Path arches = SharedData.arches();
    Assumptions.assumeTrue(Files.exists(arches), "skipped: no shared arches at " + arches);
    List<Path> files;
    try (Stream<Path> all = Files.list(arches)) {
      files = all.filter(file -> file.toString().endsWith(".ply")).toList();
    }
    assertThat(files).hasSizeGreaterThanOrEqualTo(9);
    for (Path file : files) {
      RawMesh mesh = MeshFiles.read(file, Watch.NONE);
      assertThat(mesh.triangleCount()).as(file.toString()).isBetween(9_000, 17_000);
      assertThat(mesh.facts().announcedFaces()).hasValue(mesh.triangleCount());
      assertThat(mesh.allFinite()).isTrue();
      assertThat(mesh.facts().notes()).isEmpty();
    }
  }
}
