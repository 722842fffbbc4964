package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class StlAsciiReaderTest {
  private final String text = Samples.stlText();

  @Test
  void severalSolidsAreOneSurface() {
    RawMesh mesh = Samples.read(text + text.replace("10.5", "11.5"));
    assertThat(mesh.triangleCount()).isEqualTo(8);
    assertThat(mesh.vertexCount()).as("shared corners are welded").isEqualTo(5);
    assertThat(mesh.facts().solids()).isEqualTo(2);
  }

  @Test
  void lettersBlanksAndLineEndsDoNotMatter() {
    for (String same :
        new String[] {
          text.toUpperCase(java.util.Locale.ROOT),
          text.replace("\n", "\r\n"),
          text.replace("\n", "\r"),
          text.replace(" ", "\t  "),
          "\u00EF\u00BB\u00BF" + text,
          "\n\n" + text,
          text.stripTrailing(),
          text.replace("solid cast of today\n", "solid\n"),
          text.replace(" facet normal 0 0 1\n", "facet\n\n")
        }) {
      assertThat(Samples.soup(Samples.read(same))).isEqualTo(Samples.tetrahedronSoup());
    }
  }

  @Test
  void aFacetOfFourCornersIsCut() {
    RawMesh mesh =
        Samples.read(
            """
            solid
            facet normal 0 0 1 outer loop
            vertex 0 0 0 vertex 1 0 0 vertex 1 1 0 vertex 0 1 0
            endloop endfacet
            endsolid
            """);
    assertThat(mesh.triangleCount()).isEqualTo(2);
    assertThat(mesh.facts().polygonsTriangulated()).isEqualTo(1);
  }

  @Test
  void brokenSisters() {
    Refused.file(IoProblem.STL_TEXT_CUT_OFF, text.substring(0, text.length() / 2));
    Refused.file(IoProblem.STL_TEXT_CUT_OFF, text.replace("endsolid cast of today\n", ""));
    Refused.file(IoProblem.STL_WORD, text.replaceFirst("outer loop", "outer hoop"));
    Refused.file(IoProblem.STL_WORD, text.replaceFirst("endfacet\n", ""));
    Refused.file(IoProblem.NO_NUMBER, text.replaceFirst("vertex 0.0", "vertex 0,0"));
    Refused.file(IoProblem.NO_TRIANGLES, "solid empty\nendsolid empty\n");
  }
}
