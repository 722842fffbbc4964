package rodwork.geometry.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * The boundary edges of a mesh, joined into loops, and which of them is the outer rim.
 *
 * <p>A boundary edge has one triangle. At a vertex it is continued by the boundary edge at the
 * other end of the same fan of triangles, whatever their winding, so that two surfaces that touch
 * at a vertex keep their own loops; a loop that comes to one vertex twice (a hole that touches the
 * rim, two holes that touch) is cut there into two. Where edges with more than two triangles break
 * the fans, the edges that are left over at a vertex are joined in pairs; an odd one ends an open
 * chain.
 *
 * <p><b>Rim or hole.</b> In each component the longest loop is the rim, if it is at least as long
 * as the diagonal of the component's box; every other loop is a hole. A shell that ends somewhere
 * has an end that goes round it, while a closed body with a gap has only holes: the opening of a
 * sphere, say, counts as a rim from 0.55 of its radius.
 */
public final class BoundaryLoops {
  private final List<BoundaryLoop> loops;
  private final int[] loopOfEdge;

  private BoundaryLoops(List<BoundaryLoop> loops, int[] loopOfEdge) {
    this.loops = loops;
    this.loopOfEdge = loopOfEdge;
  }

  public static BoundaryLoops of(MeshTopology topology) {
    return of(topology, Components.of(topology));
  }

  /**
   * As {@link #of(MeshTopology)}, where the components are known already.
   *
   * @param components those of the same topology
   */
  public static BoundaryLoops of(MeshTopology topology, Components components) {
    List<Chain> chains = new BoundaryWalk(topology).chains();
    int[] rims = rims(topology, components, chains);
    int[] loopOfEdge = new int[topology.edgeCount()];
    Arrays.fill(loopOfEdge, -1);
    List<BoundaryLoop> loops = new ArrayList<>();
    for (Chain chain : chains) {
      int id = loops.size();
      int component = components.of(topology.edgeTriangle(chain.edges[0], 0));
      var kind = rims[component] == id ? BoundaryLoop.Kind.RIM : BoundaryLoop.Kind.HOLE;
      loops.add(
          new BoundaryLoop(
              id, component, kind, chain.closed, chain.lengthMm, chain.edges, chain.vertices));
      for (int edge : chain.edges) {
        loopOfEdge[edge] = id;
      }
    }
    return new BoundaryLoops(List.copyOf(loops), loopOfEdge);
  }

  /** All loops; the index is the id. */
  public List<BoundaryLoop> loops() {
    return loops;
  }

  public int count() {
    return loops.size();
  }

  /** The loop of an edge; −1 where the edge is no boundary. */
  public int loopOf(int edge) {
    return loopOfEdge[edge];
  }

  /** Whether an edge bounds a hole: it is a boundary and no part of a rim. */
  public boolean isHole(int edge) {
    int loop = loopOfEdge[edge];
    return loop >= 0 && loops.get(loop).kind() == BoundaryLoop.Kind.HOLE;
  }

  public List<BoundaryLoop> rims() {
    return loops.stream().filter(l -> l.kind() == BoundaryLoop.Kind.RIM).toList();
  }

  public List<BoundaryLoop> holes() {
    return loops.stream().filter(l -> l.kind() == BoundaryLoop.Kind.HOLE).toList();
  }

  /** The number of the chain that is the rim of each component; −1 where it has none. */
  private static int[] rims(MeshTopology topology, Components components, List<Chain> chains) {
    int[] rims = new int[components.count()];
    Arrays.fill(rims, -1);
    double[] longest = new double[components.count()];
    for (int i = 0; i < chains.size(); i++) {
      int component = components.of(topology.edgeTriangle(chains.get(i).edges[0], 0));
      if (chains.get(i).lengthMm > longest[component]) {
        longest[component] = chains.get(i).lengthMm;
        rims[component] = i;
      }
    }
    double[] diagonals = chains.isEmpty() ? new double[0] : diagonals(topology, components);
    for (int c = 0; c < diagonals.length; c++) {
      if (longest[c] < diagonals[c]) {
        rims[c] = -1;
      }
    }
    return rims;
  }

  private static double[] diagonals(MeshTopology topology, Components components) {
    TriangleMesh mesh = topology.mesh();
    int n = components.count();
    double[] low = new double[3 * n];
    double[] high = new double[3 * n];
    Arrays.fill(low, Double.POSITIVE_INFINITY);
    Arrays.fill(high, Double.NEGATIVE_INFINITY);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int c = 3 * components.of(t);
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        low[c] = Math.min(low[c], mesh.x(v));
        high[c] = Math.max(high[c], mesh.x(v));
        low[c + 1] = Math.min(low[c + 1], mesh.y(v));
        high[c + 1] = Math.max(high[c + 1], mesh.y(v));
        low[c + 2] = Math.min(low[c + 2], mesh.z(v));
        high[c + 2] = Math.max(high[c + 2], mesh.z(v));
      }
    }
    double[] diagonals = new double[n];
    for (int c = 0; c < n; c++) {
      diagonals[c] =
          new Vec3(
                  high[3 * c] - low[3 * c],
                  high[3 * c + 1] - low[3 * c + 1],
                  high[3 * c + 2] - low[3 * c + 2])
              .length();
    }
    return diagonals;
  }

  /** A finished chain, before it is known what it bounds. */
  record Chain(int[] edges, int[] vertices, boolean closed, double lengthMm) {}
}
