package rodwork.geometry.overhang;

import java.util.Arrays;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A mesh laid out for the loops of this package, made once a mesh: vertices, triangles and edges
 * renumbered along a space-filling curve, so that what is close in space is close in memory. (Scan
 * files are often in no order; without this every look at a triangle misses the caches, and a
 * survey of 270,000 triangles takes twice as long.)
 *
 * <p>All indices of this package count in this order; {@link #vertexOf}, {@link #triangleOf} and
 * {@link #edgeOf} lead back to the mesh. {@code ends[2e], ends[2e + 1]} are the vertices of edge e;
 * {@code opposite[2e], opposite[2e + 1]} the corners across it in its first and second triangle, −1
 * where there is no second.
 */
final class CasterMesh {
  /** Bits a coordinate in the place on the curve: cells of 0.1 mm on a cast of 100 mm. */
  private static final int CURVE_BITS = 10;

  final int count;
  final double[] xyz;
  final int[] corners;
  final int[] ends;
  final int[] opposite;
  final boolean[] nonManifold;
  final double meanLengthMm;

  /** Mesh vertex of each vertex here, and the other way. */
  final int[] vertexOf;

  final int[] placeOf;
  final int[] triangleOf;
  final int[] edgeOf;

  CasterMesh(MeshTopology topology) {
    TriangleMesh mesh = topology.mesh();
    int vertices = mesh.vertexCount();
    int triangles = mesh.triangleCount();
    this.count = topology.edgeCount();

    this.vertexOf = order(vertices, curve(mesh));
    int[] place = inverse(vertexOf);
    this.placeOf = place;
    this.xyz = new double[3 * vertices];
    for (int i = 0; i < vertices; i++) {
      int v = vertexOf[i];
      xyz[3 * i] = mesh.x(v);
      xyz[3 * i + 1] = mesh.y(v);
      xyz[3 * i + 2] = mesh.z(v);
    }

    long[] keys = new long[triangles];
    for (int t = 0; t < triangles; t++) {
      keys[t] =
          Math.min(
              place[mesh.corner(t, 0)],
              Math.min(place[mesh.corner(t, 1)], place[mesh.corner(t, 2)]));
    }
    this.triangleOf = order(triangles, keys);
    this.corners = new int[3 * triangles];
    for (int i = 0; i < triangles; i++) {
      for (int k = 0; k < 3; k++) {
        corners[3 * i + k] = place[mesh.corner(triangleOf[i], k)];
      }
    }

    keys = new long[count];
    for (int e = 0; e < count; e++) {
      keys[e] = Math.min(place[topology.edgeVertex(e, 0)], place[topology.edgeVertex(e, 1)]);
    }
    this.edgeOf = order(count, keys);
    this.ends = new int[2 * count];
    this.opposite = new int[2 * count];
    this.nonManifold = new boolean[count];
    double sum = 0;
    for (int i = 0; i < count; i++) {
      int e = edgeOf[i];
      int a = topology.edgeVertex(e, 0);
      int b = topology.edgeVertex(e, 1);
      ends[2 * i] = place[a];
      ends[2 * i + 1] = place[b];
      nonManifold[i] = topology.isNonManifold(e);
      sum += mesh.vertex(a).distance(mesh.vertex(b));
      for (int side = 0; side < 2; side++) {
        int t = topology.edgeTriangle(e, side);
        int across = -1;
        for (int k = 0; t >= 0 && k < 3; k++) {
          int v = mesh.corner(t, k);
          if (v != a && v != b) {
            across = place[v];
          }
        }
        opposite[2 * i + side] = across;
      }
    }
    this.meanLengthMm = count == 0 ? 1 : sum / count;
  }

  private static int[] inverse(int[] order) {
    int[] place = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      place[order[i]] = i;
    }
    return place;
  }

  /** The indices 0 to n by rising key (below 2^31), ties by index. */
  private static int[] order(int n, long[] keys) {
    for (int i = 0; i < n; i++) {
      keys[i] = keys[i] << 32 | i;
    }
    Arrays.parallelSort(keys);
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = (int) keys[i];
    }
    return order;
  }

  /** Place of each vertex on a Morton curve through the bounding cube. */
  private static long[] curve(TriangleMesh mesh) {
    int n = mesh.vertexCount();
    double[] low = {1e300, 1e300, 1e300};
    double[] high = {-1e300, -1e300, -1e300};
    for (int v = 0; v < n; v++) {
      double[] p = {mesh.x(v), mesh.y(v), mesh.z(v)};
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], p[k]);
        high[k] = Math.max(high[k], p[k]);
      }
    }
    double size = Math.max(high[0] - low[0], Math.max(high[1] - low[1], high[2] - low[2]));
    double scale = size > 0 ? ((1 << CURVE_BITS) - 1) / size : 0;
    long[] keys = new long[n];
    for (int v = 0; v < n; v++) {
      keys[v] =
          spread((int) (scale * (mesh.x(v) - low[0])))
              | spread((int) (scale * (mesh.y(v) - low[1]))) << 1
              | spread((int) (scale * (mesh.z(v) - low[2]))) << 2;
    }
    return keys;
  }

  /** The bits of i, two empty places after each. */
  private static long spread(int i) {
    long x = i;
    x = (x | x << 16) & 0x30000FF0000FFL;
    x = (x | x << 8) & 0x300F00F00F00FL;
    x = (x | x << 4) & 0x30C30C30C30C3L;
    return (x | x << 2) & 0x9249249249249L;
  }
}
