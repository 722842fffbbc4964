package rodwork.geometry.intake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rodwork.geometry.mesh.BoundaryLoop;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Fills holes of three or four edges; larger ones stay, for what closes them would be made up and a
 * depth measured there would be, too.
 */
final class Pinholes {
  private Pinholes() {}

  static void fill(Draft draft, int mostEdges, List<Remark> remarks) {
    List<BoundaryLoop> pinholes =
        draft.loops().holes().stream()
            .filter(hole -> hole.closed() && hole.edgeCount() <= mostEdges)
            .toList();
    if (pinholes.isEmpty()) {
      return;
    }
    MeshTopology topology = draft.topology();
    Set<Join> joins = joins(topology, pinholes);
    List<Integer> corners = new ArrayList<>();
    int filled = 0;
    for (BoundaryLoop hole : pinholes) {
      List<Integer> patch = patch(topology.mesh(), hole, joins);
      corners.addAll(patch);
      filled += patch.isEmpty() ? 0 : 1;
    }
    if (filled > 0) {
      draft.append(corners.stream().mapToInt(Integer::intValue).toArray());
      remarks.add(RemarkKind.PINHOLES_FILLED.remark(filled, mostEdges, filled, corners.size() / 3));
    }
  }

  /** One or two triangles that run against the hole's edges; none where they would not fit. */
  private static List<Integer> patch(TriangleMesh mesh, BoundaryLoop hole, Set<Join> joins) {
    int a = hole.vertex(0);
    int b = hole.vertex(1);
    int c = hole.vertex(2);
    if (hole.edgeCount() == 3) {
      return List.of(a, c, b);
    }
    int d = hole.vertex(3);
    boolean shorterAc =
        mesh.vertex(a).distance(mesh.vertex(c)) <= mesh.vertex(b).distance(mesh.vertex(d));
    for (boolean alongAc : new boolean[] {shorterAc, !shorterAc}) {
      // a diagonal that is an edge already would get more than two triangles
      if (joins.add(alongAc ? Join.of(a, c) : Join.of(b, d))) {
        return alongAc ? List.of(a, c, b, a, d, c) : List.of(b, d, c, b, a, d);
      }
    }
    return List.of();
  }

  /** The edges that join two vertices of pinholes. */
  private static Set<Join> joins(MeshTopology topology, List<BoundaryLoop> pinholes) {
    BitSet near = new BitSet();
    for (BoundaryLoop hole : pinholes) {
      for (int i = 0; i < hole.vertexCount(); i++) {
        near.set(hole.vertex(i));
      }
    }
    Set<Join> joins = new HashSet<>();
    for (int e = 0; e < topology.edgeCount(); e++) {
      int a = topology.edgeVertex(e, 0);
      int b = topology.edgeVertex(e, 1);
      if (near.get(a) && near.get(b)) {
        joins.add(Join.of(a, b));
      }
    }
    return joins;
  }

  private record Join(int low, int high) {
    static Join of(int a, int b) {
      return new Join(Math.min(a, b), Math.max(a, b));
    }
  }
}
