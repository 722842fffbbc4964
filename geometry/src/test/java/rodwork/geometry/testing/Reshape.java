package rodwork.geometry.testing;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.UnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Changes of a mesh whose effect on a measurement is known: turn, mirror, refine, roughen, cut. */
public final class Reshape {
  private Reshape() {}

  /** Every vertex carried by {@code move}; the triangles stay. */
  public static TriangleMesh each(TriangleMesh mesh, UnaryOperator<Vec3> move) {
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = move.apply(mesh.vertex(v));
      xyz[3 * v] = p.x();
      xyz[3 * v + 1] = p.y();
      xyz[3 * v + 2] = p.z();
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }

  /** A point or direction turned about an axis through the origin, right-handed. */
  public static Vec3 turned(Vec3 p, Vec3 axis, double degrees) {
    Vec3 a = axis.unit();
    double c = Math.cos(Math.toRadians(degrees));
    double s = Math.sin(Math.toRadians(degrees));
    return p.times(c).plus(a.cross(p).times(s)).plus(a.times(a.dot(p) * (1 - c)));
  }

  public static TriangleMesh turned(TriangleMesh mesh, Vec3 axis, double degrees) {
    return each(mesh, p -> turned(p, axis, degrees));
  }

  /** The mesh mirrored in the plane x = 0 and turned inside out, so that outside stays outside. */
  public static TriangleMesh mirrored(TriangleMesh mesh) {
    return flipped(each(mesh, p -> new Vec3(-p.x(), p.y(), p.z())), t -> true);
  }

  /** The chosen triangles turned inside out. */
  public static TriangleMesh flipped(TriangleMesh mesh, IntPredicate triangle) {
    int[] corners = mesh.copyOfCorners();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (triangle.test(t)) {
        int swap = corners[3 * t + 1];
        corners[3 * t + 1] = corners[3 * t + 2];
        corners[3 * t + 2] = swap;
      }
    }
    return TriangleMesh.of(mesh.copyOfCoordinates(), corners);
  }

  /** The chosen triangles alone; all vertices stay, so their numbers do too. */
  public static TriangleMesh only(TriangleMesh mesh, IntPredicate triangle) {
    int[] corners = mesh.copyOfCorners();
    int kept = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (triangle.test(t)) {
        System.arraycopy(corners, 3 * t, corners, 3 * kept++, 3);
      }
    }
    return TriangleMesh.of(mesh.copyOfCoordinates(), Arrays.copyOf(corners, 3 * kept));
  }

  /** Two meshes in one, those of the first first; nothing is welded. */
  public static TriangleMesh joined(TriangleMesh first, TriangleMesh second) {
    int vertices = first.vertexCount();
    double[] xyz =
        DoubleStream.concat(
                Arrays.stream(first.copyOfCoordinates()), Arrays.stream(second.copyOfCoordinates()))
            .toArray();
    int[] corners =
        IntStream.concat(
                Arrays.stream(first.copyOfCorners()),
                Arrays.stream(second.copyOfCorners()).map(v -> v + vertices))
            .toArray();
    return TriangleMesh.of(xyz, corners);
  }

  /** The triangles whose middle lies above the plane z = {@code z}: an open shell. */
  public static TriangleMesh above(TriangleMesh mesh, double z) {
    return only(mesh, t -> mesh.pointOn(t, 1.0 / 3, 1.0 / 3).z() > z);
  }

  /** Every vertex moved by normal noise of this deviation in each coordinate [mm]. */
  public static TriangleMesh roughened(TriangleMesh mesh, double sigmaMm, long seed) {
    Random random = new Random(seed);
    return each(
        mesh,
        p ->
            p.plus(
                new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
                    .times(sigmaMm)));
  }

  /**
   * Each triangle cut into four at the middles of its sides: the same surface, not welded across
   * the old edges' middles unless both sides name the same edge, which they do in a welded mesh.
   */
  public static TriangleMesh refined(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    int vertices = mesh.vertexCount();
    double[] xyz = Arrays.copyOf(mesh.copyOfCoordinates(), 3 * (vertices + topology.edgeCount()));
    for (int e = 0; e < topology.edgeCount(); e++) {
      Vec3 middle =
          mesh.vertex(topology.edgeVertex(e, 0))
              .plus(mesh.vertex(topology.edgeVertex(e, 1)))
              .times(0.5);
      xyz[3 * (vertices + e)] = middle.x();
      xyz[3 * (vertices + e) + 1] = middle.y();
      xyz[3 * (vertices + e) + 2] = middle.z();
    }
    int[] corners = new int[12 * mesh.triangleCount()];
    int n = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = mesh.corner(t, 0);
      int b = mesh.corner(t, 1);
      int c = mesh.corner(t, 2);
      int ab = vertices + topology.triangleEdge(t, 0);
      int bc = vertices + topology.triangleEdge(t, 1);
      int ca = vertices + topology.triangleEdge(t, 2);
      for (int corner : new int[] {a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca}) {
        corners[n++] = corner;
      }
    }
    return TriangleMesh.of(xyz, corners);
  }
}
