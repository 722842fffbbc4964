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
  private final int[] mates;

  // The walk under way: edges[i] begins at vertices[i]; placeOf finds a vertex in it.
  private final int[] placeOf;
  private int[] edges = new int[64];
  private int[] vertices = new int[64];
  private int length;

  BoundaryWalk(MeshTopology topology) {
    this.topology = topology;
    this.mesh = topology.mesh();
    this.mates = new int[2 * topology.edgeCount()];
    this.placeOf = new int[mesh.vertexCount()];
    Arrays.fill(mates, NONE);
    Arrays.fill(placeOf, NONE);
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
        if (!done[edge] && mates[2 * edge + side] == NONE) {
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
        if (mates[end] == NONE) {
          int other = acrossFan(edge, topology.edgeVertex(edge, side));
          if (other != NONE && other != end && mates[other] == NONE) {
            mates[end] = other;
            mates[other] = end;
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
        if (mates[end] == NONE) {
          int vertex = topology.edgeVertex(edge, side);
          Integer other = waiting.remove(vertex);
          if (other == null) {
            waiting.put(vertex, end);
          } else {
            mates[end] = other;
            mates[other] = end;
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
    length = 0;
    int end = startEnd;
    while (true) {
      int edge = end >> 1;
      int vertex = topology.edgeVertex(edge, end & 1);
      if (placeOf[vertex] != NONE) {
        cutLoop(placeOf[vertex], chains);
      }
      if (done[edge]) {
        return; // back at the start, and all of the walk cut off
      }
      push(edge, vertex);
      done[edge] = true;
      int mate = mates[end ^ 1];
      if (mate == NONE) {
        finishOpen(topology.edgeVertex(edge, 1 - (end & 1)), chains);
        return;
      }
      end = mate;
    }
  }

  private void push(int edge, int vertex) {
    if (length == edges.length) {
      edges = Arrays.copyOf(edges, 2 * length);
      vertices = Arrays.copyOf(vertices, 2 * length);
    }
    placeOf[vertex] = length;
    edges[length] = edge;
    vertices[length++] = vertex;
  }

  private void finishOpen(int lastVertex, List<Chain> chains) {
    if (placeOf[lastVertex] != NONE) {
      cutLoop(placeOf[lastVertex], chains);
    }
    if (length > 0) {
      int[] all = Arrays.copyOf(vertices, length + 1);
      all[length] = lastVertex;
      chains.add(chain(Arrays.copyOf(edges, length), all, false));
      forget(0);
    }
  }

  /** Takes the walk from a vertex that is met again to here off as a closed loop of its own. */
  private void cutLoop(int from, List<Chain> chains) {
    chains.add(
        chain(
            Arrays.copyOfRange(edges, from, length),
            Arrays.copyOfRange(vertices, from, length),
            true));
    forget(from);
  }

  private void forget(int from) {
    for (int i = from; i < length; i++) {
      placeOf[vertices[i]] = NONE;
    }
    length = from;
  }

  private Chain chain(int[] chainEdges, int[] chainVertices, boolean closed) {
    double sum = 0;
    for (int edge : chainEdges) {
      sum +=
          mesh.vertex(topology.edgeVertex(edge, 0))
              .distance(mesh.vertex(topology.edgeVertex(edge, 1)));
    }
    return new Chain(chainEdges, chainVertices, closed, sum);
  }
}
