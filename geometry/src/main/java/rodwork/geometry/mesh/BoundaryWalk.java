package rodwork.geometry.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rodwork.geometry.mesh.BoundaryLoops.Chain;

/**
 * Follows boundary edges from one to the next; the rules stand at {@link BoundaryLoops}.
 *
 * <p>An "end" is an edge at one of its two vertices, number {@code 2 · edge + side}; each end has
 * at most one mate, the end with which the boundary goes on at that vertex.
 */
final class BoundaryWalk {
  private static final int NONE = -1;

  private final MeshTopology topology;
  private final TriangleMesh mesh;
  private final Map<Integer, Integer> mates = new HashMap<>();

  BoundaryWalk(MeshTopology topology) {
    this.topology = topology;
    this.mesh = topology.mesh();
  }

  List<Chain> chains() {
    int[] boundary = boundaryEdges();
    mateAlongFans(boundary);
    mateLeftOvers(boundary);
    List<Chain> chains = new ArrayList<>();
    boolean[] done = new boolean[topology.edgeCount()];
    // Open chains first, each from an end without a mate; what is left is closed.
    for (int edge : boundary) {
      for (int side = 0; side < 2; side++) {
        if (!done[edge] && !mates.containsKey(2 * edge + side)) {
          follow(2 * edge + side, done, chains);
        }
      }
    }
    for (int edge : boundary) {
      if (!done[edge]) {
        follow(2 * edge + firstSide(edge), done, chains);
      }
    }
    return chains;
  }

  private int[] boundaryEdges() {
    int[] edges = new int[topology.edgeCount()];
    int count = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      if (topology.isBoundary(e)) {
        edges[count++] = e;
      }
    }
    return Arrays.copyOf(edges, count);
  }

  private void mateAlongFans(int[] boundary) {
    for (int edge : boundary) {
      for (int side = 0; side < 2; side++) {
        int end = 2 * edge + side;
        if (!mates.containsKey(end)) {
          int other = acrossFan(edge, topology.edgeVertex(edge, side));
          if (other != NONE && other != end && !mates.containsKey(other)) {
            mates.put(end, other);
            mates.put(other, end);
          }
        }
      }
    }
  }

  /** The end at the far side of the fan of triangles about a vertex that begins at an edge. */
  private int acrossFan(int startEdge, int vertex) {
    int triangle = topology.edgeTriangle(startEdge, 0);
    int edge = startEdge;
    // No fan has more triangles than the mesh; the bound ends any walk in a tangled one.
    for (int steps = 0; steps <= mesh.triangleCount(); steps++) {
      int next = NONE;
      int nextTriangle = NONE;
      for (int k = 0; k < 3; k++) {
        int e = topology.triangleEdge(triangle, k);
        if (e != edge
            && (topology.edgeVertex(e, 0) == vertex || topology.edgeVertex(e, 1) == vertex)) {
          next = e;
          nextTriangle = topology.neighbour(triangle, k);
        }
      }
      if (next == NONE || topology.isNonManifold(next)) {
        return NONE;
      }
      if (topology.isBoundary(next)) {
        return 2 * next + (topology.edgeVertex(next, 0) == vertex ? 0 : 1);
      }
      edge = next;
      triangle = nextTriangle;
    }
    return NONE;
  }

  private void mateLeftOvers(int[] boundary) {
    Map<Integer, Integer> waiting = new HashMap<>();
    for (int edge : boundary) {
      for (int side = 0; side < 2; side++) {
        int end = 2 * edge + side;
        if (!mates.containsKey(end)) {
          int vertex = topology.edgeVertex(edge, side);
          Integer other = waiting.remove(vertex);
          if (other == null) {
            waiting.put(vertex, end);
          } else {
            mates.put(end, other);
            mates.put(other, end);
          }
        }
      }
    }
  }

  /** The side of an edge at which its triangle enters it, so that the walk follows the winding. */
  private int firstSide(int edge) {
    int triangle = topology.edgeTriangle(edge, 0);
    for (int k = 0; k < 3; k++) {
      if (topology.triangleEdge(triangle, k) == edge) {
        return mesh.corner(triangle, k) == topology.edgeVertex(edge, 0) ? 0 : 1;
      }
    }
    throw new AssertionError("edge " + edge + " is not in its triangle " + triangle);
  }

  private void follow(int startEnd, boolean[] done, List<Chain> chains) {
    // What was walked and not yet cut off as a loop; vertices[i] is where edges[i] begins.
    List<Integer> edges = new ArrayList<>();
    List<Integer> vertices = new ArrayList<>();
    Map<Integer, Integer> placeOf = new HashMap<>();
    int end = startEnd;
    while (true) {
      int edge = end >> 1;
      int vertex = topology.edgeVertex(edge, end & 1);
      Integer seen = placeOf.get(vertex);
      if (seen != null) {
        cutLoop(edges, vertices, seen, placeOf, chains);
      }
      if (done[edge]) {
        break;
      }
      placeOf.put(vertex, vertices.size());
      vertices.add(vertex);
      edges.add(edge);
      done[edge] = true;
      Integer mate = mates.get(end ^ 1);
      if (mate == null) {
        int last = topology.edgeVertex(edge, 1 - (end & 1));
        Integer back = placeOf.get(last);
        if (back != null) {
          cutLoop(edges, vertices, back, placeOf, chains);
        }
        if (!edges.isEmpty()) {
          vertices.add(last);
          chains.add(chain(edges, vertices, false));
        }
        break;
      }
      end = mate;
    }
  }

  /** Takes the walk from a vertex that is met again to here off as a closed loop of its own. */
  private void cutLoop(
      List<Integer> edges,
      List<Integer> vertices,
      int from,
      Map<Integer, Integer> placeOf,
      List<Chain> chains) {
    List<Integer> loopEdges = edges.subList(from, edges.size());
    List<Integer> loopVertices = vertices.subList(from, vertices.size());
    chains.add(chain(loopEdges, loopVertices, true));
    loopVertices.forEach(placeOf::remove);
    loopEdges.clear();
    loopVertices.clear();
  }

  private Chain chain(List<Integer> edges, List<Integer> vertices, boolean closed) {
    double length = 0;
    for (int edge : edges) {
      length +=
          mesh.vertex(topology.edgeVertex(edge, 0))
              .distance(mesh.vertex(topology.edgeVertex(edge, 1)));
    }
    return new Chain(
        edges.stream().mapToInt(Integer::intValue).toArray(),
        vertices.stream().mapToInt(Integer::intValue).toArray(),
        closed,
        length);
  }
}
