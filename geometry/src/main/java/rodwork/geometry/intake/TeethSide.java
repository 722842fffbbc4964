package rodwork.geometry.intake;

import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A guess at where the teeth are, good enough to measure the edges there.
 *
 * <p>An open shell faces the occlusal side on the whole, so up is the sum of its area-weighted
 * normals. A closed cast stands on a flat base, so up is against its largest flat side. Near the
 * teeth is the upper half of the height. Where the sum is below a tenth of the area, or no flat
 * side has a twentieth of it, there is no guess, and all edges count.
 */
final class TeethSide {
  private static final double LEAST_SUM_SHARE = 0.1;
  private static final double LEAST_BASE_SHARE = 0.05;

  /** Directions are told apart by cells of about 4° on the faces of a cube. */
  private static final int CELLS = 25;

  private TeethSide() {}

  static EdgeLengths edgeLengths(MeshTopology topology, BoundaryLoops loops) {
    TriangleMesh mesh = topology.mesh();
    Vec3 up = loops.rims().isEmpty() ? againstBase(mesh) : facing(mesh);
    if (up == null) {
      return EdgeLengths.of(topology);
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double height = height(mesh, v, up);
      low = Math.min(low, height);
      high = Math.max(high, height);
    }
    double half = (low + high) / 2;
    return EdgeLengths.near(topology, v -> height(mesh, v, up) >= half);
  }

  private static double height(TriangleMesh mesh, int v, Vec3 up) {
    return mesh.x(v) * up.x() + mesh.y(v) * up.y() + mesh.z(v) * up.z();
  }

  private static @Nullable Vec3 facing(TriangleMesh mesh) {
    Vec3 sum = Vec3.ZERO;
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.doubleAreaNormal(t);
      sum = sum.plus(normal);
      area += normal.length();
    }
    return sum.length() < LEAST_SUM_SHARE * area ? null : sum.unit();
  }

  private static @Nullable Vec3 againstBase(TriangleMesh mesh) {
    double[] areas = new double[6 * CELLS * CELLS];
    double total = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.doubleAreaNormal(t);
      double area = normal.length();
      total += area;
      if (area > 0) {
        areas[cell(normal)] += area;
      }
    }
    int best = 0;
    for (int c = 1; c < areas.length; c++) {
      best = areas[c] > areas[best] ? c : best;
    }
    if (!(areas[best] >= LEAST_BASE_SHARE * total)) {
      return null;
    }
    Vec3 sum = Vec3.ZERO;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.doubleAreaNormal(t);
      if (normal.length() > 0 && cell(normal) == best) {
        sum = sum.plus(normal);
      }
    }
    return sum.unit().times(-1);
  }

  private static int cell(Vec3 d) {
    double x = Math.abs(d.x());
    double y = Math.abs(d.y());
    double z = Math.abs(d.z());
    if (x >= y && x >= z) {
      return cell(d.x() > 0 ? 0 : 1, d.y() / x, d.z() / x);
    }
    return y >= z
        ? cell(d.y() > 0 ? 2 : 3, d.x() / y, d.z() / y)
        : cell(d.z() > 0 ? 4 : 5, d.x() / z, d.y() / z);
  }

  /** Cells are centred on the middle of each face, for bases lie along the axes more often. */
  private static int cell(int face, double u, double v) {
    int i = (int) Math.min(CELLS - 1, Math.round((u + 1) / 2 * (CELLS - 1)));
    int j = (int) Math.min(CELLS - 1, Math.round((v + 1) / 2 * (CELLS - 1)));
    return (face * CELLS + i) * CELLS + j;
  }
}
