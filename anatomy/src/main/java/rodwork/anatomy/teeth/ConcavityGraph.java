package rodwork.anatomy.teeth;

import rodwork.anatomy.Arch;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The triangles of a cast as a graph: neighbours are joined by a weight that falls steeply where
 * the surface between them is concave, as it is at a gingival margin and between teeth.
 */
final class ConcavityGraph {
  /** How steeply weights fall with the root of the concavity [mm^½]; a first experiment's value. */
  private static final double STEEPNESS = 24;

  /** Concavity above this tells no more [1/mm]. */
  private static final double SHARPEST = 2;

  private static final double LEAST_WEIGHT = 1e-7;

  final double[] area;
  final Vec3[] centre;

  /** Neighbour of triangle t over its side k at 3t + k, −1 at a rim. */
  final int[] neighbour;

  /** Weight of that neighbour, 0 at a rim. */
  final double[] weight;

  ConcavityGraph(Arch arch) {
    MeshTopology topology = arch.topology();
    TriangleMesh mesh = arch.mesh();
    int n = mesh.triangleCount();
    area = new double[n];
    centre = new Vec3[n];
    neighbour = new int[3 * n];
    weight = new double[3 * n];
    Vec3[] normal = new Vec3[n];
    for (int t = 0; t < n; t++) {
      Vec3 twice = mesh.doubleAreaNormal(t);
      area[t] = twice.length() / 2;
      normal[t] = area[t] > 0 ? twice.times(0.5 / area[t]) : Vec3.ZERO;
      centre[t] = mesh.pointOn(t, 1.0 / 3, 1.0 / 3);
      for (int k = 0; k < 3; k++) {
        neighbour[3 * t + k] = topology.neighbour(t, k);
      }
    }
    normal = smoothed(smoothed(normal));
    for (int t = 0; t < n; t++) {
      for (int k = 0; k < 3; k++) {
        int u = neighbour[3 * t + k];
        if (u >= 0) {
          int edge = topology.triangleEdge(t, k);
          double length =
              mesh.vertex(topology.edgeVertex(edge, 0))
                  .distance(mesh.vertex(topology.edgeVertex(edge, 1)));
          weight[3 * t + k] = weight(normal[t], normal[u], centre[u].minus(centre[t]), length);
        }
      }
    }
  }

  private static double weight(Vec3 here, Vec3 there, Vec3 way, double edge) {
    double distance = way.length() + 1e-9;
    double concavity = Math.max(0, here.minus(there).dot(way) / (distance * distance));
    double fall = Math.exp(-STEEPNESS * Math.sqrt(Math.min(SHARPEST, concavity)));
    return Math.max(LEAST_WEIGHT, edge / distance * fall);
  }

  private Vec3[] smoothed(Vec3[] normal) {
    Vec3[] out = new Vec3[normal.length];
    for (int t = 0; t < normal.length; t++) {
      Vec3 sum = normal[t].times(area[t]);
      for (int k = 0; k < 3; k++) {
        int u = neighbour[3 * t + k];
        if (u >= 0) {
          sum = sum.plus(normal[u].times(Math.sqrt(area[u] * area[t])));
        }
      }
      double length = sum.length();
      out[t] = length > 0 ? sum.times(1 / length) : normal[t];
    }
    return out;
  }

  int size() {
    return area.length;
  }

  boolean atRim(int t) {
    return neighbour[3 * t] < 0 || neighbour[3 * t + 1] < 0 || neighbour[3 * t + 2] < 0;
  }
}
