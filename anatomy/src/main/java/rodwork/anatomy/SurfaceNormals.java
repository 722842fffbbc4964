package rodwork.anatomy;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Area, centre and normal of each triangle of a mesh, in flat arrays of stride 3, read once because
 * the search for the base goes over them many times. The normals can be evened out against the
 * roughness of a scan without rounding off the edges of a trimmed base.
 */
final class SurfaceNormals {
  /** Neighbours turned farther than this [cosine of 35°] lie across an edge of the base. */
  private static final double SAME_FACE_COSINE = Math.cos(Math.toRadians(35));

  final double[] area;
  final double[] centre;
  final double[] normal;
  final double totalArea;

  SurfaceNormals(TriangleMesh mesh) {
    int triangles = mesh.triangleCount();
    area = new double[triangles];
    centre = new double[3 * triangles];
    normal = new double[3 * triangles];
    double sum = 0;
    for (int t = 0; t < triangles; t++) {
      Vec3 twice = mesh.doubleAreaNormal(t);
      double length = twice.length();
      area[t] = length / 2;
      sum += length / 2;
      Vec3 middle = mesh.pointOn(t, 1.0 / 3, 1.0 / 3);
      set(centre, t, middle.x(), middle.y(), middle.z());
      if (length > 0) {
        set(normal, t, twice.x() / length, twice.y() / length, twice.z() / length);
      }
    }
    totalArea = sum;
  }

  private static void set(double[] array, int t, double x, double y, double z) {
    array[3 * t] = x;
    array[3 * t + 1] = y;
    array[3 * t + 2] = z;
  }

  Vec3 normal(int t) {
    return new Vec3(normal[3 * t], normal[3 * t + 1], normal[3 * t + 2]);
  }

  Vec3 centre(int t) {
    return new Vec3(centre[3 * t], centre[3 * t + 1], centre[3 * t + 2]);
  }

  double normalAlong(int t, Vec3 d) {
    return normal[3 * t] * d.x() + normal[3 * t + 1] * d.y() + normal[3 * t + 2] * d.z();
  }

  double centreAlong(int t, Vec3 d) {
    return centre[3 * t] * d.x() + centre[3 * t + 1] * d.y() + centre[3 * t + 2] * d.z();
  }

  /** Typical edge length [mm]: of the equilateral triangle of mean area. */
  double meanEdge() {
    return Math.sqrt(totalArea / Math.max(1, area.length) * 4 / Math.sqrt(3));
  }

  /**
   * Evens the normals out: each becomes the area-weighted mean of its own and its neighbours' on
   * the same face, {@code rounds} times.
   */
  void smooth(MeshTopology topology, int rounds) {
    double[] from = normal.clone();
    for (int round = 0; round < rounds; round++) {
      for (int t = 0; t < area.length; t++) {
        double x = from[3 * t];
        double y = from[3 * t + 1];
        double z = from[3 * t + 2];
        double weight = area[t];
        double sx = weight * x;
        double sy = weight * y;
        double sz = weight * z;
        for (int k = 0; k < 3; k++) {
          int u = topology.neighbour(t, k);
          if (u < 0) {
            continue;
          }
          double ux = from[3 * u];
          double uy = from[3 * u + 1];
          double uz = from[3 * u + 2];
          if (x * ux + y * uy + z * uz > SAME_FACE_COSINE) {
            sx += area[u] * ux;
            sy += area[u] * uy;
            sz += area[u] * uz;
          }
        }
        double length = Math.sqrt(sx * sx + sy * sy + sz * sz);
        if (length > 0) {
          set(normal, t, sx / length, sy / length, sz / length);
        }
      }
      if (round + 1 < rounds) {
        System.arraycopy(normal, 0, from, 0, from.length);
      }
    }
  }
}
