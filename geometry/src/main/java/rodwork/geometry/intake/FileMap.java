package rodwork.geometry.intake;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Which vertex and triangle of the mesh each one of the file became, and the other way.
 *
 * <p>Order is kept: of two file vertices that both live on, the earlier has the lower number, and
 * so for triangles. New triangles (filled pinholes) come last.
 */
public final class FileMap {
  private final int fileVertices;
  private final int fileTriangles;

  /** Null where every one keeps its number. */
  private final int @Nullable [] meshVertex;

  private final int @Nullable [] fileVertex;
  private final int @Nullable [] meshTriangle;
  private final int @Nullable [] fileTriangle;

  private FileMap(
      int fileVertices,
      int fileTriangles,
      int @Nullable [] meshVertex,
      int @Nullable [] fileVertex,
      int @Nullable [] meshTriangle,
      int @Nullable [] fileTriangle) {
    this.fileVertices = fileVertices;
    this.fileTriangles = fileTriangles;
    this.meshVertex = meshVertex;
    this.fileVertex = fileVertex;
    this.meshTriangle = meshTriangle;
    this.fileTriangle = fileTriangle;
  }

  /**
   * @param meshVertex by file vertex, −1 where it is gone; null for no change
   * @param meshVertices how many vertices the mesh has
   * @param fileTriangle by mesh triangle, −1 where it is new; null for no change
   */
  static FileMap of(
      int fileVertices,
      int fileTriangles,
      int @Nullable [] meshVertex,
      int meshVertices,
      int @Nullable [] fileTriangle) {
    int[] fileVertex = null;
    if (meshVertex != null) {
      fileVertex = new int[meshVertices];
      for (int v = fileVertices - 1; v >= 0; v--) {
        if (meshVertex[v] >= 0) {
          fileVertex[meshVertex[v]] = v; // going down, so that the first of welded ones remains
        }
      }
    }
    int[] meshTriangle = null;
    if (fileTriangle != null) {
      meshTriangle = new int[fileTriangles];
      Arrays.fill(meshTriangle, -1);
      for (int t = 0; t < fileTriangle.length; t++) {
        if (fileTriangle[t] >= 0) {
          meshTriangle[fileTriangle[t]] = t;
        }
      }
    }
    return new FileMap(
        fileVertices, fileTriangles, meshVertex, fileVertex, meshTriangle, fileTriangle);
  }

  /** Whether every vertex and triangle kept its number, and none came in or went. */
  public boolean isIdentity() {
    return meshVertex == null && fileTriangle == null;
  }

  public int fileTriangleCount() {
    return fileTriangles;
  }

  /** The mesh vertex of a file vertex; −1 where it is gone. Welded ones share theirs. */
  public int meshVertex(int vertexOfFile) {
    return meshVertex == null ? vertexOfFile : meshVertex[vertexOfFile];
  }

  /** The first file vertex that became a mesh vertex. */
  public int fileVertex(int vertexOfMesh) {
    return fileVertex == null ? vertexOfMesh : fileVertex[vertexOfMesh];
  }

  /** The mesh triangle of a file triangle; −1 where it is gone. */
  public int meshTriangle(int triangleOfFile) {
    return meshTriangle == null ? triangleOfFile : meshTriangle[triangleOfFile];
  }

  /** The file triangle of a mesh triangle; −1 where it is new. */
  public int fileTriangle(int triangleOfMesh) {
    return fileTriangle == null ? triangleOfMesh : fileTriangle[triangleOfMesh];
  }

  /**
   * The file's vertices in its order, those in exactly the same place once, those that are gone
   * from the mesh included: what a file of results has a value for. For a file that needed no
   * mending they are 0, 1, 2, ...
   */
  public IntStream distinctFileVertices() {
    return IntStream.range(0, fileVertices)
        .filter(v -> meshVertex(v) < 0 || fileVertex(meshVertex(v)) == v);
  }
}
