package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ObjReaderTest {
  private final String text = Samples.obj();

  @Test
  void coloursBehindTheCoordinatesAreKept() {
    RawMesh mesh = Samples.read("v 0 0 0\nv 1 0 0 1 0.5 0\nv 0 1 0 1.0\nf 1 2 3\n");
    assertThat(mesh.vertexColour(0)).isEqualTo(Colours.WHITE);
    assertThat(mesh.vertexColour(1)).isEqualTo(0xFFFF8000);
    assertThat(mesh.vertexColour(2)).as("a lone fourth number is a weight").isEqualTo(0xFFFFFFFF);
  }

  @Test
  void facesMayNameVerticesThatComeLater() {
    RawMesh mesh = Samples.read("v 0 0 0\nf 1 2 3\nv 1 0 0\nf -2 2 1 3\nv 0 1 0\nf 3 2 1\n");
    assertThat(mesh.copyOfCorners()).startsWith(0, 1, 2).endsWith(2, 1, 0);
    assertThat(mesh.facts().faces()).isEqualTo(3);
  }

  @Test
  void linesAndPointsAreToldAndLeftOut() {
    RawMesh mesh = Samples.read(text + "l 1 2\np 1\n");
    assertThat(mesh.facts().notes())
        .containsExactly("2 lines that hold points, lines or curves were left out.");
  }

  @Test
  void brokenSisters() {
    Refused.file(IoProblem.NO_TRIANGLES, text.replaceAll("(?m)^(f .*|4)\n", ""));
    Refused.file(IoProblem.LINE_TOO_SHORT, text.replace("v 10 0 0", "v 10 0"));
    Refused.file(IoProblem.NO_NUMBER, text.replace("v 10 0 0", "v 10 0 zero"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("f -4 -3 -1", "f -5 -3 -1"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("f 1 3/1", "f 1 5/1"));
    Refused.file(IoProblem.OBJ_CORNER, text.replace("f -4 -3 -1", "f 0 -3 -1"));
    Refused.file(IoProblem.OBJ_CORNER, text.replace("f -4 -3 -1", "f a -3 -1"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("f 1 3/1", "f 99999999999 3/1"));
  }
}
