package rodwork.anatomy;

import java.util.Arrays;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A thinned set of the vertices of the anatomic surface: what the arch frame is fitted to.
 *
 * <p>Every k-th vertex is taken, counted in the file's order, so that the choice does not depend on
 * the pose of the cast.
 *
 * @param xyz coordinates [mm], stride 3
 */
record PointCloud(double[] xyz) {

  int size() {
    return xyz.length / 3;
  }

  Vec3 point(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  /** Coordinate of a point along a direction [mm]. */
  double along(int i, Vec3 direction) {
    return xyz[3 * i] * direction.x()
        + xyz[3 * i + 1] * direction.y()
        + xyz[3 * i + 2] * direction.z();
  }

  Vec3 mean() {
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < size(); i++) {
      sum = sum.plus(point(i));
    }
    return sum.times(1.0 / Math.max(1, size()));
  }

  /** At most {@code limit} vertices of the anatomic surface. */
  static PointCloud of(TriangleMesh mesh, AnatomicSurface surface, int limit) {
    boolean[] used = new boolean[mesh.vertexCount()];
    int count = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (surface.isBase(t)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        if (!used[v]) {
          used[v] = true;
          count++;
        }
      }
    }
    int stride = Math.max(1, (count + limit - 1) / limit);
    double[] xyz = new double[3 * ((count + stride - 1) / stride)];
    int seen = 0;
    int filled = 0;
    for (int v = 0; v < used.length; v++) {
      if (used[v] && seen++ % stride == 0) {
        xyz[filled++] = mesh.x(v);
        xyz[filled++] = mesh.y(v);
        xyz[filled++] = mesh.z(v);
      }
    }
    return new PointCloud(xyz);
  }

  /**
   * The points farther than {@code margin} [mm] from the rims of the anatomic surface, where a scan
   * ends in scraps that stand up like cusps.
   */
  PointCloud awayFromRims(MeshTopology topology, AnatomicSurface surface, double margin) {
    TriangleMesh mesh = topology.mesh();
    double[] rim = new double[64];
    int filled = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      int first = topology.edgeTriangle(e, 0);
      int second = topology.edgeTriangle(e, 1);
      boolean inside = !surface.isBase(first);
      boolean across = second >= 0 && !surface.isBase(second);
      if (inside == across) {
        continue;
      }
      if (filled + 3 > rim.length) {
        rim = Arrays.copyOf(rim, 2 * rim.length);
      }
      Vec3 middle =
          mesh.vertex(topology.edgeVertex(e, 0))
              .plus(mesh.vertex(topology.edgeVertex(e, 1)))
              .times(0.5);
      rim[filled++] = middle.x();
      rim[filled++] = middle.y();
      rim[filled++] = middle.z();
    }
    if (filled == 0) {
      return this;
    }
    Buckets near = Buckets.of(Arrays.copyOf(rim, filled), margin);
    double[] kept = new double[xyz.length];
    int count = 0;
    for (int i = 0; i < size(); i++) {
      if (!near.anyWithin(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2])) {
        System.arraycopy(xyz, 3 * i, kept, count, 3);
        count += 3;
      }
    }
    return new PointCloud(Arrays.copyOf(kept, count));
  }
}
