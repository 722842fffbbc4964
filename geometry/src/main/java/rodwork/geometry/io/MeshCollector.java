package rodwork.geometry.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What a reader gathers before it becomes a {@link RawMesh}; mutable, one a reading. */
final class MeshCollector {
  final String name;
  final Format format;
  final Budget budget;
  final Doubles xyz;
  final Ints corners;
  final List<String> notes = new ArrayList<>();

  Optional<Ints> vertexColours = Optional.empty();
  Optional<Ints> faceColours = Optional.empty();
  Optional<LengthUnit> declaredUnit = Optional.empty();
  OptionalLong announcedFaces = OptionalLong.empty();
  long faces;
  long polygonsTriangulated;
  long recordsDropped;
  int solids = 1;

  /**
   * @param coordinates first room for coordinates, from real bytes and never from a header's count
   * @param cornerNumbers first room for corners, likewise
   */
  MeshCollector(String name, Format format, Budget budget, int coordinates, int cornerNumbers) {
    this.name = name;
    this.format = format;
    this.budget = budget;
    this.xyz = new Doubles(budget, coordinates);
    this.corners = new Ints(budget, cornerNumbers);
  }

  int vertexCount() {
    return xyz.size() / 3;
  }

  RawMesh finish() {
    if (corners.size() == 0) {
      throw IoProblem.NO_TRIANGLES.refusal(name, format.label(), vertexCount());
    }
    FileFacts facts =
        new FileFacts(
            name,
            format,
            format != Format.STL_BINARY && format != Format.STL_ASCII,
            declaredUnit,
            announcedFaces,
            faces,
            polygonsTriangulated,
            recordsDropped,
            solids,
            notes);
    return RawMesh.of(
        xyz.finish(),
        corners.finish(),
        vertexColours.map(Ints::finish),
        faceColours.map(Ints::finish),
        facts);
  }
}
