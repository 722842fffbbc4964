package rodwork.geometry.intake;

import java.util.Arrays;
import java.util.function.IntPredicate;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * How long the edges of a mesh are.
 *
 * @param medianMm the middle one [mm]
 * @param p95Mm 95 in 100 are no longer [mm]
 * @param edges how many were measured
 * @param nearTeeth whether they are those near the teeth alone, or all
 */
public record EdgeLengths(double medianMm, double p95Mm, int edges, boolean nearTeeth) {
  /** Every edge. */
  public static EdgeLengths of(MeshTopology topology) {
    return of(topology, v -> true, false);
  }

  /**
   * The edges with both ends at chosen vertices, taken as those near the teeth; all edges where
   * there are none such.
   */
  public static EdgeLengths near(MeshTopology topology, IntPredicate vertex) {
    EdgeLengths chosen = of(topology, vertex, true);
    return chosen.edges > 0 ? chosen : of(topology);
  }

  private static EdgeLengths of(MeshTopology topology, IntPredicate vertex, boolean nearTeeth) {
    TriangleMesh mesh = topology.mesh();
    // 32 bits are plenty for a statistic, and sort faster
    float[] lengths = new float[topology.edgeCount()];
    int n = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      int a = topology.edgeVertex(e, 0);
      int b = topology.edgeVertex(e, 1);
      if (vertex.test(a) && vertex.test(b)) {
        double dx = mesh.x(a) - mesh.x(b);
        double dy = mesh.y(a) - mesh.y(b);
        double dz = mesh.z(a) - mesh.z(b);
        lengths[n++] = (float) Math.sqrt(dx * dx + dy * dy + dz * dz);
      }
    }
    if (n == 0) {
      return new EdgeLengths(0, 0, 0, nearTeeth);
    }
    Arrays.sort(lengths, 0, n);
    return new EdgeLengths(lengths[n / 2], lengths[(int) (0.95 * (n - 1))], n, nearTeeth);
  }
}
