package rodwork.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Where vertices change sides: the chains of triangles that a line between two kinds of vertices
 * runs through.
 *
 * <p>Each chain is a list of crossings {@code triangle, edge index} in walking order: crossing i is
 * edge {@code k} of its triangle, where the line leaves that triangle. A chain that starts at a
 * boundary has a crossing of its own for the way in.
 */
final class Contour {
  private Contour() {}

  /**
   * One chain.
   *
   * @param edges mesh edges crossed, in order
   * @param triangles triangle between edge i and edge i + 1; one fewer than edges when open, as
   *     many when closed
   * @param closed whether the last edge leads back to the first
   */
  record Chain(int[] edges, int[] triangles, boolean closed) {}

  /**
   * The chains of triangles with corners on both sides.
   *
   * @param above for each vertex, whether it is on the upper side
   * @param wanted which triangles count
   */
  static List<Chain> chains(MeshTopology topology, boolean[] above, IntPredicate wanted) {
    TriangleMesh mesh = topology.mesh();
    int n = mesh.triangleCount();
    int[] crossed = new int[1024];
    int count = 0;
    for (int t = 0; t < n; t++) {
      boolean a = above[mesh.corner(t, 0)];
      if ((a != above[mesh.corner(t, 1)] || a != above[mesh.corner(t, 2)])
          && topology.triangleEdge(t, 0) >= 0
          && wanted.test(t)) {
        if (count == crossed.length) {
          crossed = Arrays.copyOf(crossed, 2 * count);
        }
        crossed[count++] = t;
      }
    }
    boolean[] open = new boolean[n];
    for (int i = 0; i < count; i++) {
      open[crossed[i]] = true;
    }
    List<Chain> chains = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      if (open[crossed[i]]) {
        chains.add(chain(topology, above, crossed[i], open));
      }
    }
    return chains;
  }

  private static Chain chain(MeshTopology topology, boolean[] above, int seed, boolean[] open) {
    open[seed] = false;
    int k0 = -1;
    int k1 = -1;
    for (int k = 0; k < 3; k++) {
      if (changes(topology, above, seed, k)) {
        if (k0 < 0) {
          k0 = k;
        } else {
          k1 = k;
        }
      }
    }
    Grow forward = new Grow(topology, above, open);
    forward.from(seed, k1);
    int firstEdge = topology.triangleEdge(seed, k0);
    if (forward.count > 0 && forward.edges[forward.count - 1] == firstEdge && forward.count > 2) {
      // Came round: the edges after k1 end with k0.
      int[] triangles = new int[forward.count];
      System.arraycopy(forward.triangles, 0, triangles, 0, forward.count - 1);
      triangles[forward.count - 1] = seed;
      return new Chain(Arrays.copyOf(forward.edges, forward.count), triangles, true);
    }
    Grow back = new Grow(topology, above, open);
    back.from(seed, k0);
    int[] edges = new int[forward.count + back.count];
    int[] triangles = new int[edges.length - 1];
    for (int i = 0; i < back.count; i++) {
      edges[i] = back.edges[back.count - 1 - i];
    }
    System.arraycopy(forward.edges, 0, edges, back.count, forward.count);
    for (int i = 0; i < back.count - 1; i++) {
      triangles[i] = back.triangles[back.count - 2 - i];
    }
    triangles[back.count - 1] = seed;
    System.arraycopy(forward.triangles, 0, triangles, back.count, forward.count - 1);
    return new Chain(edges, triangles, false);
  }

  private static boolean changes(MeshTopology topology, boolean[] above, int t, int k) {
    TriangleMesh mesh = topology.mesh();
    return above[mesh.corner(t, k)] != above[mesh.corner(t, k == 2 ? 0 : k + 1)];
  }

  /** The edges met when leaving a triangle and walking on while triangles are open. */
  private static final class Grow {
    private final MeshTopology topology;
    private final boolean[] above;
    private final boolean[] open;
    private int[] edges = new int[64];
    private int[] triangles = new int[64];
    private int count;

    Grow(MeshTopology topology, boolean[] above, boolean[] open) {
      this.topology = topology;
      this.above = above;
      this.open = open;
    }

    void from(int seed, int k) {
      int t = seed;
      int out = k;
      while (true) {
        if (count == edges.length) {
          edges = Arrays.copyOf(edges, 2 * count);
          triangles = Arrays.copyOf(triangles, 2 * count);
        }
        int edge = topology.triangleEdge(t, out);
        edges[count] = edge;
        int next = topology.neighbour(t, out);
        triangles[count++] = next;
        if (next < 0 || !open[next]) {
          return;
        }
        open[next] = false;
        int way = -1;
        for (int j = 0; j < 3; j++) {
          if (topology.triangleEdge(next, j) != edge && changes(topology, above, next, j)) {
            way = j;
          }
        }
        t = next;
        out = way;
      }
    }
  }
}
