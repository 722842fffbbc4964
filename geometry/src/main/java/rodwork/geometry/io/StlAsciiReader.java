package rodwork.geometry.io;

import rodwork.geometry.Refusal;

/**
 * ASCII STL: words and numbers between {@code solid} and {@code endsolid}, any number of solids;
 * welded while it is read.
 *
 * <p>Upper and lower case alike; blanks and line ends do not matter but for the name behind {@code
 * solid}. Normals are left out: the corners tell them. A facet of more than three corners is cut
 * into triangles. A file that ends without {@code endsolid} was cut off and is refused.
 */
final class StlAsciiReader {
  private final Words words;
  private final MeshCollector mesh;
  private final Welder welder;

  private StlAsciiReader(Input in, Budget budget) {
    words = new Words(in, -1);
    mesh = new MeshCollector(in.name(), Format.STL_ASCII, budget, 3 * 1024, 3 * 2048);
    welder = new Welder(budget, mesh.xyz, 1024);
    mesh.solids = 0;
  }

  static RawMesh read(Input in, Budget budget) {
    StlAsciiReader reader = new StlAsciiReader(in, budget);
    while (reader.words.nextAnywhere()) {
      reader.expect("solid");
      reader.solid();
    }
    return reader.mesh.finish();
  }

  private void solid() {
    mesh.solids++;
    words.nextLine();
    for (nextWord(); !words.is("endsolid"); nextWord()) {
      expect("facet");
      facet();
    }
    words.nextLine();
  }

  private void facet() {
    mesh.beginFace();
    nextWord();
    if (words.is("normal")) {
      for (int k = 0; k < 3; k++) {
        nextWord(); // its worth is not asked for
      }
      nextWord();
    }
    expect("outer");
    nextWord();
    expect("loop");
    for (nextWord(); words.is("vertex"); nextWord()) {
      mesh.corner(welder.vertex(number(), number(), number()));
    }
    expect("endloop");
    nextWord();
    expect("endfacet");
    mesh.endFace(Colours.WHITE);
  }

  private double number() {
    nextWord();
    return words.number();
  }

  private void nextWord() {
    if (!words.nextAnywhere()) {
      throw cutOff();
    }
  }

  private Refusal cutOff() {
    return IoProblem.STL_TEXT_CUT_OFF.refusal(mesh.name, words.line(), mesh.faces);
  }

  private void expect(String word) {
    if (!words.is(word)) {
      if (words.atEnd() && mesh.solids > 0) {
        throw cutOff();
      }
      throw IoProblem.STL_WORD.refusal(mesh.name, words.line(), words.text(), word);
    }
  }
}
