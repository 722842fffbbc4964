package rodwork.geometry.mesh;

import java.util.Optional;
import java.util.function.IntConsumer;
import rodwork.geometry.Vec3;

/**
 * A tree of boxes over the triangles of a mesh, for rays, closest points and plane sections.
 *
 * <p>Immutable; many threads may ask at once. Triangles are two-sided. Made in about n log n; the
 * queries cost about log n. Of several equally good answers the one with the lowest triangle number
 * is given, so that answers do not depend on how the tree was cut.
 */
public final class TriangleTree {
  private final TriangleMesh mesh;
  private final float[] box;
  private final int[] first;
  private final int[] count;
  private final int[] order;

  /** Entries that a walk down the deepest branch leaves behind. */
  private final int stackSize;

  /** Corners in the order of the leaves, stride 9, so that a leaf reads one stretch of memory. */
  private final double[] corners;

  private TriangleTree(TriangleMesh mesh, TreeBuild build) {
    this.mesh = mesh;
    this.box = build.box;
    this.first = build.first;
    this.count = build.count;
    this.order = build.order;
    this.stackSize = depth() + 2;
    this.corners = new double[9 * order.length];
    for (int i = 0; i < order.length; i++) {
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(order[i], k);
        corners[9 * i + 3 * k] = mesh.x(v);
        corners[9 * i + 3 * k + 1] = mesh.y(v);
        corners[9 * i + 3 * k + 2] = mesh.z(v);
      }
    }
  }

  public static TriangleTree of(TriangleMesh mesh) {
    return new TriangleTree(mesh, new TreeBuild(mesh));
  }

  private int depth() {
    int[] depths = new int[first.length]; // children stand after their parents
    int deepest = 0;
    for (int node = 0; node < first.length; node++) {
      if (count[node] == 0 && order.length > 0) {
        depths[first[node]] = depths[node] + 1;
        depths[first[node] + 1] = depths[node] + 1;
        deepest = Math.max(deepest, depths[node] + 1);
      }
    }
    return deepest;
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  /** The point of the mesh nearest to a point; empty for a mesh without triangles. */
  public Optional<SurfacePoint> closest(Vec3 point) {
    return closest(point, Double.POSITIVE_INFINITY);
  }

  /** The point of the mesh nearest to a point, where one lies within {@code reach} [mm]. */
  public Optional<SurfacePoint> closest(Vec3 point, double reach) {
    if (order.length == 0 || !(reach >= 0)) {
      return Optional.empty();
    }
    ClosestPoint best = new ClosestPoint(point.x(), point.y(), point.z(), reach * reach);
    int[] stack = new int[stackSize];
    double[] distances = new double[stackSize];
    int depth = 0;
    int node = 0;
    double nodeDistance = squaredDistance(0, best);
    while (true) {
      if (nodeDistance <= best.squared) {
        if (count[node] == 0) {
          int left = first[node];
          double toLeft = squaredDistance(left, best);
          double toRight = squaredDistance(left + 1, best);
          boolean leftFirst = toLeft <= toRight;
          stack[depth] = leftFirst ? left + 1 : left;
          distances[depth++] = leftFirst ? toRight : toLeft;
          node = leftFirst ? left : left + 1;
          nodeDistance = leftFirst ? toLeft : toRight;
          continue;
        }
        for (int i = first[node], end = i + count[node]; i < end; i++) {
          best.offer(corners, 9 * i, order[i]);
        }
      }
      if (depth == 0) {
        break;
      }
      node = stack[--depth];
      nodeDistance = distances[depth];
    }
    return best.triangle < 0 ? Optional.empty() : Optional.of(best.surfacePoint());
  }

  /** Squared distance of a node's box, a hair too small at most. */
  private double squaredDistance(int node, ClosestPoint q) {
    int b = 6 * node;
    double dx = Math.max(Math.max(box[b] - q.x, q.x - box[b + 3]), 0);
    double dy = Math.max(Math.max(box[b + 1] - q.y, q.y - box[b + 4]), 0);
    double dz = Math.max(Math.max(box[b + 2] - q.z, q.z - box[b + 5]), 0);
    return dx * dx + dy * dy + dz * dz;
  }

  /**
   * The first point of the mesh on a ray.
   *
   * @param direction of any length; distances are in its lengths
   * @param reach how far the ray goes, in lengths of the direction
   */
  public Optional<SurfacePoint> firstHit(Vec3 origin, Vec3 direction, double reach) {
    Ray ray = new Ray(origin, direction, reach);
    cast(ray, false);
    return ray.triangle < 0
        ? Optional.empty()
        : Optional.of(
            new SurfacePoint(
                ray.triangle, origin.plus(direction.times(ray.distance)), ray.distance));
  }

  /** Whether a ray meets the mesh at all; takes less time than {@link #firstHit}. */
  public boolean anyHit(Vec3 origin, Vec3 direction, double reach) {
    Ray ray = new Ray(origin, direction, reach);
    cast(ray, true);
    return ray.triangle >= 0;
  }

  private void cast(Ray ray, boolean any) {
    if (order.length == 0) {
      return;
    }
    int[] stack = new int[stackSize];
    double[] entries = new double[stackSize];
    int depth = 0;
    int node = 0;
    double entry = ray.entry(box, 0);
    while (true) {
      if (entry <= ray.distance) {
        if (count[node] == 0) {
          int left = first[node];
          double intoLeft = ray.entry(box, 6 * left);
          double intoRight = ray.entry(box, 6 * left + 6);
          boolean leftFirst = intoLeft <= intoRight;
          stack[depth] = leftFirst ? left + 1 : left;
          entries[depth++] = leftFirst ? intoRight : intoLeft;
          node = leftFirst ? left : left + 1;
          entry = leftFirst ? intoLeft : intoRight;
          continue;
        }
        for (int i = first[node], end = i + count[node]; i < end; i++) {
          ray.offer(corners, 9 * i, order[i]);
        }
        if (any && ray.triangle >= 0) {
          return;
        }
      }
      if (depth == 0) {
        return;
      }
      node = stack[--depth];
      entry = entries[depth];
    }
  }

  /**
   * Names the triangles whose box reaches within {@code reach} [mm] of a plane, in no order; every
   * triangle that meets the slab is among them.
   */
  public void nearPlane(Plane plane, double reach, IntConsumer triangle) {
    if (order.length == 0) {
      return;
    }
    Vec3 n = plane.normal();
    int[] stack = new int[stackSize];
    int depth = 0;
    stack[depth++] = 0;
    while (depth > 0) {
      int node = stack[--depth];
      int b = 6 * node;
      double middle =
          0.5
                  * (n.x() * ((double) box[b] + box[b + 3])
                      + n.y() * ((double) box[b + 1] + box[b + 4])
                      + n.z() * ((double) box[b + 2] + box[b + 5]))
              - plane.offset();
      double half =
          0.5
              * (Math.abs(n.x()) * ((double) box[b + 3] - box[b])
                  + Math.abs(n.y()) * ((double) box[b + 4] - box[b + 1])
                  + Math.abs(n.z()) * ((double) box[b + 5] - box[b + 2]));
      if (Math.abs(middle) > half + reach) {
        continue;
      }
      if (count[node] == 0) {
        stack[depth++] = first[node];
        stack[depth++] = first[node] + 1;
      } else {
        for (int i = first[node], end = i + count[node]; i < end; i++) {
          triangle.accept(order[i]);
        }
      }
    }
  }

  @Override
  public String toString() {
    return "tree of " + first.length + " boxes over " + mesh;
  }
}
