package rodwork.geometry.io;

import java.util.OptionalLong;

/**
 * Binary STL: 80 bytes of header, a count, then 50 bytes a triangle (normal, three corners, two
 * bytes of anything), little-endian floats; welded while it is read.
 *
 * <p>The count is checked, not believed. A file that ends inside a triangle before the announced
 * count is reached was cut off and is refused; where whole triangles disagree with the count, all
 * are taken and a note says so; a rest behind the announced triangles that is no whole number of
 * triangles is left out with a note. Normals are left out: the corners tell them.
 */
final class StlBinaryReader {
  static final int HEADER_BYTES = 84;
  static final int RECORD_BYTES = 50;

  private StlBinaryReader() {}

  static RawMesh read(Input in, Budget budget) {
    if (!in.has(HEADER_BYTES)) {
      throw IoProblem.STL_HEADER_CUT_OFF.refusal(in.name(), in.fill(HEADER_BYTES), HEADER_BYTES);
    }
    long announced = Integer.toUnsignedLong(in.intLeAt(in.position() + 80));
    in.advance(HEADER_BYTES);
    int expected = expectedTriangles(in);
    // A closed surface has half as many vertices as triangles; an open one a few more.
    int vertices = expected / 2 + expected / 64 + 64;
    MeshCollector mesh =
        new MeshCollector(in.name(), Format.STL_BINARY, budget, 3 * vertices, 3 * expected);
    Welder welder = new Welder(budget, mesh.xyz, vertices);
    mesh.announcedFaces = OptionalLong.of(announced);

    readTriangles(in, mesh, welder, announced);
    int verticesThen = mesh.vertexCount();
    readTriangles(in, mesh, welder, Long.MAX_VALUE);

    int rest = in.limit() - in.position();
    if (rest > 0 && mesh.faces < announced) {
      throw IoProblem.STL_CUT_OFF.refusal(
          mesh.name, announced, mesh.faces + 1, announced - mesh.faces);
    }
    if (rest > 0 && announced > 0) {
      long behind = rest + RECORD_BYTES * (mesh.faces - announced);
      mesh.corners.cutTo(3 * (int) announced);
      mesh.xyz.cutTo(3 * verticesThen);
      mesh.faces = announced;
      mesh.note(
          "Behind the last triangle stand {count} bytes of something else; left out.", behind);
    }
    mesh.compareFaces();
    return mesh.finish();
  }

  /** Reads whole triangles until the mesh has so many, or the file ends. */
  private static void readTriangles(Input in, MeshCollector mesh, Welder welder, long until) {
    while (mesh.faces < until && in.has(RECORD_BYTES)) {
      int records = (in.limit() - in.position()) / RECORD_BYTES;
      records = (int) Math.min(records, until - mesh.faces);
      int place = in.position();
      for (int r = 0; r < records; r++, place += RECORD_BYTES) {
        mesh.triangle(
            corner(in, welder, place + 12),
            corner(in, welder, place + 24),
            corner(in, welder, place + 36));
      }
      in.advance(records * RECORD_BYTES);
    }
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
}
