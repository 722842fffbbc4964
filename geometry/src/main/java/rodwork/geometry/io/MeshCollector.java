package rodwork.geometry.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a reader gathers before it becomes a {@link RawMesh}; mutable, one a reading.
 *
 * <p>A face is given corner by corner and then ended. Faces that name a vertex which is still to
 * come are kept back, with all faces behind them, until the whole file is read, so that their order
 * stays.
 */
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
  int solids = 1;

  private final Ints face;
  private final Polygon polygon = new Polygon();
  private Optional<Ints> keptBack = Optional.empty();
  private long placed;
  private long polygonsTriangulated;
  private long recordsDropped;
  private long crossed;

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
    this.face = new Ints(budget, 64);
  }

  int vertexCount() {
    return xyz.size() / 3;
  }

  /** Adds a note; see {@link Sentence}. */
  void note(String template, Object... values) {
    notes.add(Sentence.of(template, values));
  }

  /** Starts a face. */
  void beginFace() {
    face.clear();
  }

  /** Adds a corner to the present face; the vertex, counted from 0, may be still to come. */
  void corner(long vertex) {
    if (vertex < 0 || vertex > Integer.MAX_VALUE) {
      throw IoProblem.NO_SUCH_VERTEX.refusal(name, faces + 1, vertex, vertexCount());
    }
    if (face.size() == Polygon.MAX_CORNERS) {
      throw IoProblem.POLYGON_TOO_LARGE.refusal(name, faces + 1, Polygon.MAX_CORNERS);
    }
    face.add((int) vertex);
  }

  /**
   * Ends the present face.
   *
   * @param colour packed colour; taken only where the file has face colours
   */
  void endFace(int colour) {
    faces++;
    int n = face.size();
    boolean known = keptBack.isEmpty();
    for (int i = 0; i < n && known; i++) {
      known = face.get(i) < vertexCount();
    }
    if (known) {
      place(face, 0, n, colour);
      return;
    }
    Ints kept = keptBack.orElseGet(() -> new Ints(budget, 1024));
    keptBack = Optional.of(kept);
    kept.add(n);
    kept.add(colour);
    for (int i = 0; i < n; i++) {
      kept.add(face.get(i));
    }
  }

  /** Adds a triangle of known vertices as a face. */
  void triangle(int a, int b, int c) {
    faces++;
    placed++;
    corners.add(a, b, c);
  }

  private void place(Ints ids, int start, int n, int colour) {
    placed++;
    for (int i = start; i < start + n; i++) {
      if (ids.get(i) >= vertexCount()) {
        throw IoProblem.NO_SUCH_VERTEX.refusal(name, placed, ids.get(i), vertexCount());
      }
    }
    if (n < 3) {
      recordsDropped++;
      return;
    }
    if (n == 3) {
      corners.add(ids.get(start), ids.get(start + 1), ids.get(start + 2));
    } else {
      polygon.cut(ids, start, n, xyz, corners);
      polygonsTriangulated++;
      crossed += polygon.crossed() ? 1 : 0;
    }
    if (faceColours.isPresent()) {
      for (int t = 0; t < n - 2; t++) {
        faceColours.get().add(colour);
      }
    }
  }

  /** Notes where the header's count of faces and the real one differ. */
  void compareFaces() {
    if (announcedFaces.isPresent() && announcedFaces.getAsLong() != faces) {
      note(
          "The header announces {announced} faces, the file holds {real}; all {real} were taken.",
          announcedFaces.getAsLong(),
          faces,
          faces);
    }
  }

  RawMesh finish() {
    if (keptBack.isPresent()) {
      Ints kept = keptBack.get();
      for (int at = 0; at < kept.size(); at += 2 + kept.get(at)) {
        place(kept, at + 2, kept.get(at), kept.get(at + 1));
      }
    }
    if (corners.size() == 0) {
      throw IoProblem.NO_TRIANGLES.refusal(name, format.label(), vertexCount());
    }
    if (recordsDropped > 0) {
      note("{count} faces with fewer than three corners were left out.", recordsDropped);
    }
    if (crossed > 0) {
      note("{count} polygons cross themselves; their triangles overlap.", crossed);
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
