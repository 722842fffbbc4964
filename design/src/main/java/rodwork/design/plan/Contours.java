package rodwork.design.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Curves on the surface at which a value of its vertices passes 0. */
final class Contours {
  private Contours() {}

  /**
   * All closed curves at which a value passes 0, over some triangles.
   *
   * @param value of a vertex
   */
  static List<Line> closed(
      MeshTopology topology, IntToDoubleFunction value, List<Integer> triangles) {
    TriangleMesh mesh = topology.mesh();
    Map<Integer, List<Integer>> next = new HashMap<>();
    for (int t : triangles) {
      List<Integer> crossed = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        double a = value.applyAsDouble(mesh.corner(t, k));
        double b = value.applyAsDouble(mesh.corner(t, (k + 1) % 3));
        if (a >= 0 != b >= 0) {
          crossed.add(topology.triangleEdge(t, k));
        }
      }
      if (crossed.size() == 2) {
        next.computeIfAbsent(crossed.get(0), _ -> new ArrayList<>()).add(crossed.get(1));
        next.computeIfAbsent(crossed.get(1), _ -> new ArrayList<>()).add(crossed.get(0));
      }
    }
    List<Line> lines = new ArrayList<>();
    while (!next.isEmpty()) {
      int start = next.keySet().stream().min(Integer::compare).orElseThrow();
      List<Vec3> points = new ArrayList<>();
      int edge = start;
      boolean back = false;
      while (true) {
        points.add(point(topology, value, edge));
        List<Integer> ways = next.remove(edge);
        int at = edge;
        Integer onwards =
            ways == null ? null : ways.stream().filter(next::containsKey).findFirst().orElse(null);
        if (onwards == null) {
          back = ways != null && points.size() > 2 && ways.contains(start) && at != start;
          break;
        }
        edge = onwards;
      }
      if (back) {
        lines.add(Line.closed(points));
      }
    }
    return lines;
  }

  private static Vec3 point(MeshTopology topology, IntToDoubleFunction value, int edge) {
    int a = topology.edgeVertex(edge, 0);
    int b = topology.edgeVertex(edge, 1);
    double va = value.applyAsDouble(a);
    double vb = value.applyAsDouble(b);
    double t = Double.isFinite(va) && Double.isFinite(vb) ? va / (va - vb) : 0.5;
    Vec3 from = topology.mesh().vertex(a);
    return from.plus(topology.mesh().vertex(b).minus(from).times(Math.clamp(t, 0, 1)));
  }
}
