package rodwork.geometry.intake;

import java.util.Arrays;
import java.util.List;
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
    MeshTopology topology = draft.topology();
    int[] fill = new int[0];
    int holes = 0;
    for (BoundaryLoop hole : draft.loops().holes()) {
      if (hole.closed() && hole.edgeCount() <= mostEdges) {
        int[] patch = patch(topology, hole);
        if (patch.length > 0) {
          int old = fill.length;
          fill = Arrays.copyOf(fill, old + patch.length);
          System.arraycopy(patch, 0, fill, old, patch.length);
          holes++;
        }
      }
    }
    if (holes > 0) {
      draft.append(fill);
      remarks.add(RemarkKind.PINHOLES_FILLED.remark(holes, mostEdges, holes, fill.length / 3));
    }
  }

  /** One or two triangles that run against the hole's edges; none where they would not fit. */
  private static int[] patch(MeshTopology topology, BoundaryLoop hole) {
    TriangleMesh mesh = topology.mesh();
    int a = hole.vertex(0);
    int b = hole.vertex(1);
    int c = hole.vertex(2);
    if (hole.edgeCount() == 3) {
      return new int[] {a, c, b};
    }
    int d = hole.vertex(3);
    boolean shorterAc =
        mesh.vertex(a).distance(mesh.vertex(c)) <= mesh.vertex(b).distance(mesh.vertex(d));
    for (boolean alongAc : new boolean[] {shorterAc, !shorterAc}) {
      // a diagonal that is an edge already would get more than two triangles
      if (!joined(topology, alongAc ? a : b, alongAc ? c : d)) {
        return alongAc ? new int[] {a, c, b, a, d, c} : new int[] {b, d, c, b, a, d};
      }
    }
    return new int[0];
  }

  private static boolean joined(MeshTopology topology, int a, int b) {
    for (int e = 0; e < topology.edgeCount(); e++) {
      int low = topology.edgeVertex(e, 0);
      int high = topology.edgeVertex(e, 1);
      if (low == Math.min(a, b) && high == Math.max(a, b)) {
        return true;
      }
    }
    return false;
  }
}
