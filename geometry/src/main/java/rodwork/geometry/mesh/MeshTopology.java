package rodwork.geometry.mesh;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Who is whose neighbour in a mesh: edges, the triangles on their sides, boundary loops.
 *
 * <p>An edge joins two vertices {@code a < b} and has one triangle (boundary), two (manifold) or
 * more. Of more than two, the first two in triangle order are kept and the edge is marked
 * {@linkplain #isNonManifold non-manifold}. Edge {@code k} of a triangle joins its corners {@code
 * k} and {@code (k + 1) % 3}. Triangles with two equal corners make no edges.
 */
public final class MeshTopology {
  /** Beyond this many edges at a vertex a bucket is hashed: a broken file may hang all on one. */
  private static final int LONG_BUCKET = 200;

  private final TriangleMesh mesh;
  private final int edgeCount;
  private final int[] edgeVertices;
  private final int[] edgeTriangles;
  private final int[] triangleEdges;
  private final boolean[] nonManifold;

  private MeshTopology(
      TriangleMesh mesh,
      int edgeCount,
      int[] edgeVertices,
      int[] edgeTriangles,
      int[] triangleEdges,
      boolean[] nonManifold) {
    this.mesh = mesh;
    this.edgeCount = edgeCount;
    this.edgeVertices = edgeVertices;
    this.edgeTriangles = edgeTriangles;
    this.triangleEdges = triangleEdges;
    this.nonManifold = nonManifold;
  }

  /** Finds the edges of a mesh in time linear in its triangles. */
  public static MeshTopology of(TriangleMesh mesh) {
    int vertices = mesh.vertexCount();
    int triangles = mesh.triangleCount();
    // Edges are bucketed by their lower vertex; buckets are short (half a vertex's valence), so a
    // scan of the bucket beats hashing.
    int[] start = new int[vertices + 1];
    for (int t = 0; t < triangles; t++) {
      for (int k = 0; k < 3; k++) {
        int a = mesh.corner(t, k);
        int b = mesh.corner(t, k == 2 ? 0 : k + 1);
        start[Math.min(a, b) + 1]++;
      }
    }
    for (int v = 0; v < vertices; v++) {
      start[v + 1] += start[v];
    }
    int[] filled = new int[vertices];
    int[] upper = new int[start[vertices]];
    int[] edgeOfSlot = new int[start[vertices]];
    int[] edgeVertices = new int[2 * start[vertices]];
    int[] edgeTriangles = new int[2 * start[vertices]];
    int[] triangleEdges = new int[3 * triangles];
    boolean[] nonManifold = new boolean[start[vertices]];
    Map<Integer, Map<Integer, Integer>> crowded = new HashMap<>();
    int edges = 0;
    for (int t = 0; t < triangles; t++) {
      int c0 = mesh.corner(t, 0);
      int c1 = mesh.corner(t, 1);
      int c2 = mesh.corner(t, 2);
      boolean collapsed = c0 == c1 || c1 == c2 || c2 == c0;
      for (int k = 0; k < 3; k++) {
        if (collapsed) {
          triangleEdges[3 * t + k] = -1;
          continue;
        }
        int a = mesh.corner(t, k);
        int b = mesh.corner(t, k == 2 ? 0 : k + 1);
        int low = Math.min(a, b);
        int high = Math.max(a, b);
        int edge = -1;
        Map<Integer, Integer> crowd = filled[low] <= LONG_BUCKET ? null : crowded.get(low);
        if (crowd != null) {
          edge = crowd.getOrDefault(high, -1);
        } else {
          for (int s = start[low], end = start[low] + filled[low]; s < end; s++) {
            if (upper[s] == high) {
              edge = edgeOfSlot[s];
              break;
            }
          }
        }
        if (edge < 0) {
          edge = edges++;
          int s = start[low] + filled[low]++;
          upper[s] = high;
          edgeOfSlot[s] = edge;
          if (crowd != null) {
            crowd.put(high, edge);
          } else if (filled[low] > LONG_BUCKET) {
            crowded.put(low, hashed(upper, edgeOfSlot, start[low], filled[low]));
          }
          edgeVertices[2 * edge] = low;
          edgeVertices[2 * edge + 1] = high;
          edgeTriangles[2 * edge] = t;
          edgeTriangles[2 * edge + 1] = -1;
        } else if (edgeTriangles[2 * edge + 1] < 0) {
          edgeTriangles[2 * edge + 1] = t;
        } else {
          nonManifold[edge] = true;
        }
        triangleEdges[3 * t + k] = edge;
      }
    }
    return new MeshTopology(
        mesh,
        edges,
        Arrays.copyOf(edgeVertices, 2 * edges),
        Arrays.copyOf(edgeTriangles, 2 * edges),
        triangleEdges,
        Arrays.copyOf(nonManifold, edges));
  }

  private static Map<Integer, Integer> hashed(int[] upper, int[] edges, int from, int count) {
    Map<Integer, Integer> map = new HashMap<>();
    for (int s = from; s < from + count; s++) {
      map.put(upper[s], edges[s]);
    }
    return map;
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  public int edgeCount() {
    return edgeCount;
  }

  /** The lower-numbered ({@code end} 0) or higher-numbered ({@code end} 1) vertex of an edge. */
  public int edgeVertex(int edge, int end) {
    return edgeVertices[2 * edge + end];
  }

  /** The first or second triangle at an edge; −1 where there is none. */
  public int edgeTriangle(int edge, int side) {
    return edgeTriangles[2 * edge + side];
  }

  /**
   * Edge {@code k} of a triangle, from corner {@code k} to the next; −1 in a collapsed triangle.
   */
  public int triangleEdge(int triangle, int k) {
    return triangleEdges[3 * triangle + k];
  }

  /** The triangle across edge {@code k}; −1 at a boundary or in a collapsed triangle. */
  public int neighbour(int triangle, int k) {
    int edge = triangleEdges[3 * triangle + k];
    if (edge < 0) {
      return -1;
    }
    int first = edgeTriangles[2 * edge];
    return first == triangle ? edgeTriangles[2 * edge + 1] : first;
  }

  public boolean isBoundary(int edge) {
    return edgeTriangles[2 * edge + 1] < 0;
  }

  /** Whether more than two triangles share the edge. */
  public boolean isNonManifold(int edge) {
    return nonManifold[edge];
  }
}
