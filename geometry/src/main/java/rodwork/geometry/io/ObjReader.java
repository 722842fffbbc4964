package rodwork.geometry.io;

import java.util.Optional;

/**
 * OBJ: lines that begin with {@code v} (vertex, perhaps with a colour behind the coordinates) and
 * {@code f} (polygon; numbers from 1, negative ones back from the last vertex). Groups and objects
 * are read through as one surface; normals, textures and materials are left out.
 */
final class ObjReader {
  private final Words words;
  private final MeshCollector mesh;
  private final double[] colour = new double[5];
  private long leftOut;

  private ObjReader(Input in, Budget budget) {
    words = new Words(in, '#');
    mesh = new MeshCollector(in.name(), Format.OBJ, budget, 3 * 1024, 3 * 2048);
  }

  static RawMesh read(Input in, Budget budget) {
    ObjReader reader = new ObjReader(in, budget);
    do {
      if (reader.words.next()) {
        reader.line();
      }
    } while (reader.words.nextLine());
    if (reader.leftOut > 0) {
      reader.mesh.note(
          "{count} lines that hold points, lines or curves were left out.", reader.leftOut);
    }
    return reader.mesh.finish();
  }

  private void line() {
    if (words.is("v")) {
      vertex();
    } else if (words.is("f") || words.is("fo")) {
      face();
    } else if (words.is("p") || words.is("l") || words.is("curv") || words.is("surf")) {
      leftOut++;
    }
  }

  private void vertex() {
    mesh.xyz.add(
        words.nextNumber("a vertex has three coordinates"),
        words.nextNumber("a vertex has three coordinates"),
        words.nextNumber("a vertex has three coordinates"));
    int more = 0;
    while (more < colour.length && nextWord()) {
      colour[more++] = words.number();
    }
    if (more >= 3) {
      Ints colours = colours();
      double alpha = more == 4 ? colour[3] : 1;
      colours.add(Colours.ofShares(colour[0], colour[1], colour[2], alpha));
    } else {
      mesh.vertexColours.ifPresent(colours -> colours.add(Colours.WHITE));
    }
  }

  /** The colours, white so far for the vertices before the present one. */
  private Ints colours() {
    if (mesh.vertexColours.isPresent()) {
      return mesh.vertexColours.get();
    }
    Ints colours = new Ints(mesh.budget, 1024);
    for (int v = 1; v < mesh.vertexCount(); v++) {
      colours.add(Colours.WHITE);
    }
    mesh.vertexColours = Optional.of(colours);
    return colours;
  }

  private void face() {
    mesh.beginFace();
    while (nextWord()) {
      mesh.corner(cornerNumber());
    }
    mesh.endFace(Colours.WHITE);
  }

  /** A word such as 7, 7/1, 7//3 or -1/-1: its first number, turned to count from 0. */
  private long cornerNumber() {
    long value = 0;
    int i = words.at(0) == '-' ? 1 : 0;
    int from = i;
    for (; words.at(i) >= '0' && words.at(i) <= '9' && i < from + 12; i++) {
      value = 10 * value + (words.at(i) - '0');
    }
    if (i == from || (words.at(i) != -1 && words.at(i) != '/') || value == 0) {
      throw IoProblem.OBJ_CORNER.refusal(mesh.name, words.line(), words.text());
    }
    return from == 1 ? mesh.vertexCount() - value : value - 1;
  }

  /** The next word of the line, or of the next one where a backslash ends this. */
  private boolean nextWord() {
    while (words.next()) {
      if (!words.is("\\")) {
        return true;
      }
      words.nextLine();
    }
    return false;
  }
}
