package rodwork.geometry.io;

import java.util.Optional;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * What a mesh file holds, before any mending; immutable.
 *
 * <p>Coordinates are in the file's own unit and may be NaN or infinite. Triangles stand in the
 * file's order with the file's winding; degenerate and repeated ones are kept. Vertices of an
 * indexed file stand in the file's order, unreferenced ones included; those of an STL in the order
 * in which their coordinates first appear.
 *
 * <p>Guaranteed: at least one triangle, every corner names a vertex, colours (where present) are as
 * many as the vertices or triangles.
 *
 * <p>Colours are packed {@code 0xAARRGGBB}, 8 bits a channel; opaque red is {@code 0xFFFF0000}.
 */
public final class RawMesh {
  private final double[] xyz;
  private final int[] corners;
  private final Optional<int[]> vertexColours;
  private final Optional<int[]> faceColours;
  private final FileFacts facts;

  private RawMesh(
      double[] xyz,
      int[] corners,
      Optional<int[]> vertexColours,
      Optional<int[]> faceColours,
      FileFacts facts) {
    this.xyz = xyz;
    this.corners = corners;
    this.vertexColours = vertexColours;
    this.faceColours = faceColours;
    this.facts = facts;
  }

  /** A mesh without colours; see {@link #of(double[], int[], Optional, Optional, FileFacts)}. */
  public static RawMesh of(double[] xyz, int[] corners, FileFacts facts) {
    return of(xyz, corners, Optional.empty(), Optional.empty(), facts);
  }

  /**
   * Makes a mesh from flat arrays and takes them over: the caller must not change them afterwards.
   *
   * @param xyz coordinates [file unit], stride 3: x, y, z of vertex 0, of vertex 1, ...
   * @param corners vertex numbers, stride 3: the corners of triangle 0, of triangle 1, ...
   * @param vertexColours one packed colour a vertex
   * @param faceColours one packed colour a triangle; the triangles of one polygon share theirs
   * @throws IllegalArgumentException if a guarantee of this class would not hold
   */
  public static RawMesh of(
      double[] xyz,
      int[] corners,
      Optional<int[]> vertexColours,
      Optional<int[]> faceColours,
      FileFacts facts) {
    if (xyz.length % 3 != 0 || corners.length % 3 != 0 || corners.length == 0) {
      throw new IllegalArgumentException(
          "array lengths must be multiples of 3, with a triangle: "
              + xyz.length
              + ", "
              + corners.length);
    }
    int vertices = xyz.length / 3;
    for (int i = 0; i < corners.length; i++) {
      if (corners[i] < 0 || corners[i] >= vertices) {
        throw new IllegalArgumentException(
            "triangle " + i / 3 + " names vertex " + corners[i] + " of " + vertices);
      }
    }
    if (vertexColours.isPresent() && vertexColours.get().length != vertices) {
      throw new IllegalArgumentException("one colour a vertex is needed");
    }
    if (faceColours.isPresent() && faceColours.get().length != corners.length / 3) {
      throw new IllegalArgumentException("one colour a triangle is needed");
    }
    return new RawMesh(xyz, corners, vertexColours, faceColours, facts);
  }

  public FileFacts facts() {
    return facts;
  }

  public int vertexCount() {
    return xyz.length / 3;
  }

  public int triangleCount() {
    return corners.length / 3;
  }

  /** First coordinate of a vertex [file unit], perhaps NaN or infinite. */
  public double x(int vertex) {
    return xyz[3 * vertex];
  }

  /** Second coordinate of a vertex [file unit], perhaps NaN or infinite. */
  public double y(int vertex) {
    return xyz[3 * vertex + 1];
  }

  /** Third coordinate of a vertex [file unit], perhaps NaN or infinite. */
  public double z(int vertex) {
    return xyz[3 * vertex + 2];
  }

  /** The vertex at corner 0, 1 or 2 of a triangle. */
  public int corner(int triangle, int corner) {
    return corners[3 * triangle + corner];
  }

  public boolean hasVertexColours() {
    return vertexColours.isPresent();
  }

  public boolean hasFaceColours() {
    return faceColours.isPresent();
  }

  /**
   * The colour of a vertex, packed {@code 0xAARRGGBB}.
   *
   * @throws java.util.NoSuchElementException if the file gave none
   */
  public int vertexColour(int vertex) {
    return vertexColours.orElseThrow()[vertex];
  }

  /**
   * The colour of a triangle, packed {@code 0xAARRGGBB}.
   *
   * @throws java.util.NoSuchElementException if the file gave none
   */
  public int faceColour(int triangle) {
    return faceColours.orElseThrow()[triangle];
  }

  /** Whether no coordinate is NaN or infinite. */
  public boolean allFinite() {
    for (double c : xyz) {
      if (!Double.isFinite(c)) {
        return false;
      }
    }
    return true;
  }

  /**
   * The same vertices and triangles as a mesh, taking the file's unit for mm; nothing is copied.
   *
   * @throws IllegalArgumentException if a coordinate is not finite
   */
  public TriangleMesh toMesh() {
    return TriangleMesh.of(xyz, corners);
  }

  /** A copy of the coordinates, stride 3 [file unit]. */
  public double[] copyOfCoordinates() {
    return xyz.clone();
  }

  /** A copy of the corners, stride 3. */
  public int[] copyOfCorners() {
    return corners.clone();
  }

  @Override
  public String toString() {
    return facts.format().label()
        + " of "
        + vertexCount()
        + " vertices, "
        + triangleCount()
        + " triangles";
  }
}
