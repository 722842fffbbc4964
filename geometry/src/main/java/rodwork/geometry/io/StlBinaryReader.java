package rodwork.geometry.io;

import java.util.Locale;
import java.util.OptionalLong;

/**
 * Binary STL: 80 bytes of header, a count, then 50 bytes a triangle, welded while it is read.
 *
 * <p>The count is checked, not believed. A file that ends inside a triangle before the announced
 * count is reached was cut off and is refused; where whole triangles disagree with the count, the
 * triangles are taken and a note says so; a rest behind the announced triangles that is no whole
 * number of triangles is left out with a note.
 */
final class StlBinaryReader {
  static final int HEADER_BYTES = 84;
  static final int RECORD_BYTES = 50;
  private static final int BATCH_RECORDS = 4096;

  private StlBinaryReader() {}

  static RawMesh read(Input in, Budget budget) {
    if (!in.has(HEADER_BYTES)) {
      throw IoProblem.STL_CUT_OFF.refusal(in.name(), "an unknown number of", 0, "all");
    }
    long announced = Integer.toUnsignedLong(in.intLeAt(in.position() + 80));
    in.advance(HEADER_BYTES);
    int expected = expectedTriangles(in);
    // A closed surface has half as many vertices as triangles; an open one a few more.
    int vertices = expected / 2 + expected / 64 + 64;
    MeshCollector mesh =
        new MeshCollector(in.name(), Format.STL_BINARY, budget, 3 * vertices, 3 * expected);
    Welder welder = new Welder(budget, mesh.xyz, vertices);
    long read = 0;
    while (in.has(RECORD_BYTES)) {
      in.fill(RECORD_BYTES * BATCH_RECORDS);
      int records = (in.limit() - in.position()) / RECORD_BYTES;
      if (in.length() < 0 && read < announced) {
        records = (int) Math.min(records, announced - read);
      }
      int place = in.position();
      for (int r = 0; r < records; r++, place += RECORD_BYTES) {
        mesh.corners.add(
            corner(in, welder, place + 12),
            corner(in, welder, place + 24),
            corner(in, welder, place + 36));
      }
      in.advance(records * RECORD_BYTES);
      read += records;
    }
    int rest = in.limit() - in.position();
    check(mesh, announced, read, rest);
    mesh.announcedFaces = OptionalLong.of(announced);
    mesh.faces = read;
    return mesh.finish();
  }

  private static int corner(Input in, Welder welder, int place) {
    return welder.vertex(
        Float.intBitsToFloat(in.intLeAt(place)),
        Float.intBitsToFloat(in.intLeAt(place + 4)),
        Float.intBitsToFloat(in.intLeAt(place + 8)));
  }

  /** From the real length of the file; a small start where that is unknown. */
  private static int expectedTriangles(Input in) {
    long bytes = in.length() - HEADER_BYTES;
    return (int) Math.max(64, Math.min(bytes / RECORD_BYTES, (Integer.MAX_VALUE - 16) / 3));
  }

  private static void check(MeshCollector mesh, long announced, long read, int rest) {
    if (read < announced && rest > 0) {
      throw IoProblem.STL_CUT_OFF.refusal(mesh.name, announced, read + 1, announced - read);
    }
    if (read != announced) {
      mesh.notes.add(
          String.format(
              Locale.ROOT,
              "The header announces %,d triangles, the file holds %,d; all %,d were taken.",
              announced,
              read,
              read));
    }
    if (rest > 0) {
      mesh.notes.add(
          "Behind the last triangle stand " + rest + " bytes that are no triangle; left out.");
    }
  }
}
