package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OffReaderTest {
  private final String text = Samples.off();

  @Test
  void coloursAndNormalsAreToldByTheHeadWord() {
    RawMesh whole =
        Samples.read(
            """
            STCNOFF 3 1 0
            0 0 0 0 0 1 255 128 0 255 0.1 0.2
            1 0 0 0 0 1 0 0 0 0
            0 1 0 0 0 1 1 2 3 4
            3 0 1 2 9 8 7
            """);
    assertThat(whole.vertexColour(0)).isEqualTo(0xFFFF8000);
    assertThat(whole.vertexColour(2)).isEqualTo(0x04010203);
    assertThat(whole.faceColour(0)).isEqualTo(0xFF090807);
    RawMesh shares =
        Samples.read("COFF\n3 1 0\n0 0 0 1.0 0.5 0 1\n1 0 0 0 0 0 0\n0 1 0 1 1 1 1\n3 0 1 2\n");
    assertThat(shares.vertexColour(0)).isEqualTo(0xFFFF8000);
    assertThat(shares.hasFaceColours()).isFalse();
    RawMesh normals =
        Samples.read("NOFF 3 1 0\n0 0 0 0 0 1\n1 0 0 0 0 1\n0 1 0 0 0 1\n3 0 1 2 5\n");
    assertThat(normals.hasVertexColours()).isFalse();
    assertThat(normals.hasFaceColours()).as("a lone number names a colour map's entry").isFalse();
  }

  @Test
  void aColourThatComesLateLeavesTheFacesBeforeWhite() {
    RawMesh mesh = Samples.read(text.replace("3 1 2 3", "3 1 2 3 0.0 0.0 1.0"));
    assertThat(mesh.faceColour(0)).isEqualTo(Colours.WHITE);
    assertThat(mesh.faceColour(3)).isEqualTo(0xFF0000FF);
  }

  @Test
  void brokenSisters() {
    Refused.file(IoProblem.OFF_BINARY, "OFF BINARY\n\0\0\0\4");
    Refused.file(IoProblem.OFF_BINARY, text.replace("OFF\n", "OFF BINARY\n"));
    Refused.file(IoProblem.OFF_DIMENSIONS, text.replace("OFF", "4OFF"));
    Refused.file(IoProblem.OFF_DIMENSIONS, text.replace("OFF", "nOFF"));
    Refused.file(IoProblem.OFF_COUNTS, "OFF\n4 4");
    Refused.file(IoProblem.OFF_COUNTS, text.replace("4 4 6", "4 -4 6"));
    Refused.file(IoProblem.OFF_CUT_OFF, text.replace("4 4 6", "4 4000000 6"));
    Refused.file(IoProblem.OFF_CUT_OFF, text.substring(0, text.length() - 20));
    Refused.file(IoProblem.LINE_TOO_SHORT, text.replace("10 0 0", "10 0"));
    Refused.file(IoProblem.LINE_TOO_SHORT, text.replace("3 0 1 3", "4 0 1 3"));
    Refused.file(IoProblem.NO_NUMBER, text.replace("10.5", "ten"));
    Refused.file(IoProblem.NO_SUCH_VERTEX, text.replace("3 1 2 3", "3 1 2 4"));
    Refused.file(IoProblem.POLYGON_TOO_LARGE, text.replace("3 1 2 3", "-3 1 2 4"));
  }
}
