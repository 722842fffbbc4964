package rodwork.geometry.io;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * OFF as text: a head word ({@code OFF} with {@code C}, {@code N}, {@code ST} before it for
 * colours, normals, texture places), three counts, one vertex a line, one polygon a line, perhaps
 * with its colour behind. Colours are whole numbers of 0 to 255 or shares of 0 to 1.
 */
final class OffReader {
  private static final int MAX_COLOUR_WORDS = 4;

  private final Words words;
  private final MeshCollector mesh;
  private final double[] channel = new double[MAX_COLOUR_WORDS];
  private boolean colours;
  private boolean normals;

  private OffReader(Input in, Budget budget) {
    words = new Words(in, '#');
    mesh = new MeshCollector(in.name(), Format.OFF, budget, 3 * 1024, 3 * 2048);
  }

  static RawMesh read(Input in, Budget budget) {
    OffReader reader = new OffReader(in, budget);
    reader.head();
    long vertices = reader.count();
    long faces = reader.count();
    reader.count(); // edges: nobody counts them
    reader.mesh.announcedFaces = OptionalLong.of(faces);
    if (reader.colours) {
      reader.mesh.vertexColours = Optional.of(new Ints(budget, 1024));
    }
    for (long v = 0; v < vertices; v++) {
      reader.nextFilledLine("vertices", vertices, v);
      reader.vertex();
    }
    for (long f = 0; f < faces; f++) {
      reader.nextFilledLine("faces", faces, f);
      reader.face();
    }
    return reader.mesh.finish();
  }

  private void head() {
    words.nextAnywhere();
    String head = words.text();
    if (head.contains("4") || head.contains("n")) {
      throw IoProblem.OFF_DIMENSIONS.refusal(mesh.name, head);
    }
    String before = head.startsWith("ST") ? head.substring(2) : head;
    colours = before.startsWith("C");
    normals = before.startsWith("N") || before.startsWith("CN");
  }

  private long count() {
    if (!words.nextAnywhere()) {
      throw IoProblem.OFF_COUNTS.refusal(mesh.name, words.line(), "the end of the file");
    }
    if (words.is("binary")) {
      throw IoProblem.OFF_BINARY.refusal(mesh.name);
    }
    long count = words.whole();
    if (count < 0) {
      throw IoProblem.OFF_COUNTS.refusal(mesh.name, words.line(), count);
    }
    return count;
  }

  private void nextFilledLine(String things, long announced, long read) {
    if (!words.nextLine() || !words.nextAnywhere()) {
      throw IoProblem.OFF_CUT_OFF.refusal(mesh.name, announced, things, read);
    }
  }

  private void vertex() {
    double x = words.number();
    mesh.xyz.add(
        x,
        words.nextNumber("a vertex has three coordinates"),
        words.nextNumber("a vertex has three coordinates"));
    for (int k = 0; normals && k < 3; k++) {
      words.nextNumber("a normal has three parts");
    }
    mesh.vertexColours.ifPresent(list -> list.add(colour()));
  }

  private void face() {
    mesh.beginFace();
    long corners = words.whole();
    if (corners < 0 || corners > Polygon.MAX_CORNERS) {
      throw IoProblem.POLYGON_TOO_LARGE.refusal(mesh.name, mesh.faces + 1, Polygon.MAX_CORNERS);
    }
    for (long c = 0; c < corners; c++) {
      if (!words.next()) {
        if (words.atEnd()) {
          throw IoProblem.OFF_CUT_OFF.refusal(
              mesh.name, mesh.announcedFaces.orElse(0), "faces", mesh.faces);
        }
        throw IoProblem.LINE_TOO_SHORT.refusal(
            mesh.name, words.line(), "this face has " + corners + " corners");
      }
      mesh.corner(words.whole());
    }
    int colour = colour();
    if (colour != Colours.WHITE && mesh.faceColours.isEmpty()) {
      Ints list = new Ints(mesh.budget, 1024);
      for (int t = 0; t < mesh.corners.size() / 3; t++) {
        list.add(Colours.WHITE);
      }
      mesh.faceColours = Optional.of(list);
    }
    mesh.endFace(colour);
  }

  /** The colour that ends the line; white where there is none or only a number in a colour map. */
  private int colour() {
    int count = 0;
    boolean shares = false;
    while (count < MAX_COLOUR_WORDS && words.next()) {
      channel[count++] = words.number();
      shares |= words.text().indexOf('.') >= 0;
    }
    if (count < 3) {
      return Colours.WHITE;
    }
    double alpha = count == 4 ? channel[3] : shares ? 1 : 255;
    return shares
        ? Colours.ofShares(channel[0], channel[1], channel[2], alpha)
        : Colours.of255(channel[0], channel[1], channel[2], alpha);
  }
}
