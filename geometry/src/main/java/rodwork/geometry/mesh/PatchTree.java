package rodwork.geometry.mesh;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import rodwork.geometry.Vec3;

/**
 * A tree over some of the triangles of a mesh: for many questions about one small part of it, where
 * a tree over all would take longer to make than to ask.
 *
 * <p>Immutable. Answers name triangles of the whole mesh.
 */
public final class PatchTree {
  private final TriangleTree tree;
  private final int[] triangles;

  private PatchTree(TriangleTree tree, int[] triangles) {
    this.tree = tree;
    this.triangles = triangles;
  }

  /**
   * Makes the tree.
   *
   * @param triangles numbers of triangles of the mesh, each once
   */
  public static PatchTree of(TriangleMesh mesh, int[] triangles) {
    Map<Integer, Integer> known = new HashMap<>();
    double[] xyz = new double[9 * triangles.length];
    int[] corners = new int[3 * triangles.length];
    for (int i = 0; i < corners.length; i++) {
      int vertex = mesh.corner(triangles[i / 3], i % 3);
      int next = known.size();
      Integer old = known.putIfAbsent(vertex, next);
      if (old == null) {
        xyz[3 * next] = mesh.x(vertex);
        xyz[3 * next + 1] = mesh.y(vertex);
        xyz[3 * next + 2] = mesh.z(vertex);
      }
      corners[i] = old == null ? next : old;
    }
    double[] used = Arrays.copyOf(xyz, 3 * known.size());
    return new PatchTree(TriangleTree.of(TriangleMesh.of(used, corners)), triangles.clone());
  }

  public int triangleCount() {
    return triangles.length;
  }

  /** The point of the patch nearest to a point, where one lies within {@code reach} [mm]. */
  public Optional<SurfacePoint> closest(Vec3 point, double reach) {
    return tree.closest(point, reach).map(this::inMesh);
  }

  /**
   * The first point of the patch on a ray.
   *
   * @param direction of any length; distances are in its lengths
   */
  public Optional<SurfacePoint> firstHit(Vec3 origin, Vec3 direction, double reach) {
    return tree.firstHit(origin, direction, reach).map(this::inMesh);
  }

  private SurfacePoint inMesh(SurfacePoint found) {
    return new SurfacePoint(triangles[found.triangle()], found.point(), found.distance());
  }
}
