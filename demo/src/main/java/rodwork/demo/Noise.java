package rodwork.demo;

import java.util.SplittableRandom;
import rodwork.geometry.mesh.TriangleMesh;

/** Roughness as a scan of plaster has it: each vertex moved a little along its normal. */
final class Noise {
  /** Root mean square of the movement [mm]. */
  static final double RMS_MM = 0.007;

  private static final double MOST_MM = 3 * RMS_MM;

  private Noise() {}

  /** The mesh with normally distributed noise, the same for the same seed. */
  static TriangleMesh on(TriangleMesh mesh, long seed) {
    double[] xyz = mesh.copyOfCoordinates();
    double[] normal = new double[xyz.length];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      var n = mesh.doubleAreaNormal(t);
      for (int k = 0; k < 3; k++) {
        int at = 3 * mesh.corner(t, k);
        normal[at] += n.x();
        normal[at + 1] += n.y();
        normal[at + 2] += n.z();
      }
    }
    SplittableRandom random = new SplittableRandom(seed);
    for (int v = 0; v < xyz.length; v += 3) {
      double nx = normal[v];
      double ny = normal[v + 1];
      double nz = normal[v + 2];
      double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
      double move = Math.clamp(RMS_MM * random.nextGaussian(), -MOST_MM, MOST_MM);
      if (length > 0) {
        xyz[v] += move * nx / length;
        xyz[v + 1] += move * ny / length;
        xyz[v + 2] += move * nz / length;
      }
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }
}
