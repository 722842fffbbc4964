package rodwork.geometry.mesh;

import java.util.Arrays;
import rodwork.geometry.Vec3;

/**
 * An indexed triangle mesh, immutable.
 *
 * <p>Vertices are numbered from 0, three coordinates each [mm]; triangles are numbered from 0,
 * three corners each, counter-clockwise seen from outside where the file was consistent. For
 * example the unit triangle in the plane z = 0 that looks up is {@code of({0,0,0, 1,0,0, 0,1,0},
 * {0,1,2})}.
 *
 * <p>Guaranteed: every coordinate is finite and every corner names a vertex. Not guaranteed: that
 * vertices are welded, triangles have area, the surface is closed, manifold or consistently turned;
 * see {@link MeshTopology} for what is known of that.
 */
public final class TriangleMesh {
  private final double[] xyz;
  private final int[] corners;

  private TriangleMesh(double[] xyz, int[] corners) {
    this.xyz = xyz;
    this.corners = corners;
  }

  /**
   * Makes a mesh from flat arrays and takes them over: the caller must not change them afterwards.
   *
   * @param xyz coordinates [mm], stride 3: x, y, z of vertex 0, of vertex 1, ...
   * @param corners vertex numbers, stride 3: the corners of triangle 0, of triangle 1, ...
   * @throws IllegalArgumentException if a length is no multiple of 3, a coordinate is not finite,
   *     or a corner names no vertex
   */
  public static TriangleMesh of(double[] xyz, int[] corners) {
    if (xyz.length % 3 != 0 || corners.length % 3 != 0) {
      throw new IllegalArgumentException(
          "array lengths must be multiples of 3: " + xyz.length + ", " + corners.length);
    }
    for (int i = 0; i < xyz.length; i++) {
      if (!Double.isFinite(xyz[i])) {
        throw new IllegalArgumentException("vertex " + i / 3 + " has a coordinate " + xyz[i]);
      }
    }
    int vertices = xyz.length / 3;
    for (int i = 0; i < corners.length; i++) {
      if (corners[i] < 0 || corners[i] >= vertices) {
        throw new IllegalArgumentException(
            "triangle " + i / 3 + " names vertex " + corners[i] + " of " + vertices);
      }
    }
    return new TriangleMesh(xyz, corners);
  }

  public int vertexCount() {
    return xyz.length / 3;
  }

  public int triangleCount() {
    return corners.length / 3;
  }

  public double x(int vertex) {
    return xyz[3 * vertex];
  }

  public double y(int vertex) {
    return xyz[3 * vertex + 1];
  }

  public double z(int vertex) {
    return xyz[3 * vertex + 2];
  }

  public Vec3 vertex(int vertex) {
    return new Vec3(xyz[3 * vertex], xyz[3 * vertex + 1], xyz[3 * vertex + 2]);
  }

  /** The vertex at corner 0, 1 or 2 of a triangle. */
  public int corner(int triangle, int corner) {
    return corners[3 * triangle + corner];
  }

  /**
   * The cross product of two sides of a triangle: direction of its outer side, length twice its
   * area [mm²]; zero where it has no area.
   */
  public Vec3 doubleAreaNormal(int triangle) {
    Vec3 a = vertex(corners[3 * triangle]);
    Vec3 b = vertex(corners[3 * triangle + 1]);
    Vec3 c = vertex(corners[3 * triangle + 2]);
    return b.minus(a).cross(c.minus(a));
  }

  /** Area of a triangle [mm²]. */
  public double area(int triangle) {
    return doubleAreaNormal(triangle).length() / 2;
  }

  /** The point with barycentric weights (1 − s − t, s, t) on a triangle. */
  public Vec3 pointOn(int triangle, double s, double t) {
    Vec3 a = vertex(corners[3 * triangle]);
    Vec3 b = vertex(corners[3 * triangle + 1]);
    Vec3 c = vertex(corners[3 * triangle + 2]);
    return a.times(1 - s - t).plus(b.times(s)).plus(c.times(t));
  }

  /** A copy of the coordinates, stride 3 [mm]. */
  public double[] copyOfCoordinates() {
    return xyz.clone();
  }

  /** A copy of the corners, stride 3. */
  public int[] copyOfCorners() {
    return corners.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof TriangleMesh mesh
        && Arrays.equals(xyz, mesh.xyz)
        && Arrays.equals(corners, mesh.corners);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(xyz) + Arrays.hashCode(corners);
  }

  @Override
  public String toString() {
    return "mesh of " + vertexCount() + " vertices, " + triangleCount() + " triangles";
  }
}
