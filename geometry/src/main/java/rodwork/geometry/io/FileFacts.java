package rodwork.geometry.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What was noticed while a mesh file was read.
 *
 * @param name the file's name as it was given; for a packed file with the name inside after a "!"
 * @param format the format that the content showed
 * @param indexed true where the file itself numbers its vertices (PLY, OBJ, OFF, 3MF, glTF); false
 *     for STL, whose corners with exactly equal coordinates were welded while reading
 * @param declaredUnit the unit that the file declares (3MF) or its standard fixes (glTF: metres);
 *     empty where the format knows no unit
 * @param announcedFaces how many faces the header promised; empty where there is no such count
 * @param faces how many face records the file really holds (a polygon counts once)
 * @param polygonsTriangulated how many of them had more than three corners and were cut into
 *     triangles
 * @param recordsDropped how many of them made no triangle, having fewer than three corners
 * @param solids how many separate bodies the file names: solids of an STL, placed objects of a 3MF,
 *     placed meshes of a glTF; 1 for the others
 * @param notes what a person should know, one plain sentence each; often empty
 */
public record FileFacts(
    String name,
    Format format,
    boolean indexed,
    Optional<LengthUnit> declaredUnit,
    OptionalLong announcedFaces,
    long faces,
    long polygonsTriangulated,
    long recordsDropped,
    int solids,
    List<String> notes) {

  public FileFacts {
    if (faces < 0 || polygonsTriangulated < 0 || recordsDropped < 0 || solids < 0) {
      throw new IllegalArgumentException("a count is negative");
    }
    if (polygonsTriangulated + recordsDropped > faces) {
      throw new IllegalArgumentException(
          polygonsTriangulated + " polygons and " + recordsDropped + " dropped of " + faces);
    }
    notes = List.copyOf(notes);
  }

  /** The facts of a file of plain triangles, with nothing to remark. */
  public static FileFacts plain(String name, Format format, boolean indexed, long triangles) {
    return new FileFacts(
        name,
        format,
        indexed,
        Optional.empty(),
        OptionalLong.empty(),
        triangles,
        0,
        0,
        1,
        List.of());
  }
}
