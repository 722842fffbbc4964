package rodwork.benchmarks;

import java.util.SplittableRandom;
import rodwork.geometry.Parallel;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;

/**
 * Many questions to a tree at once, on as many cores as the common pool has.
 *
 * <p>Points are flat arrays, stride 3: x, y, z of point 0, of point 1, ... [mm].
 */
final class Queries {
  /** How far above a vertex its ray starts, so that it misses its own triangles [mm]. */
  static final double CLEAR_MM = 1e-3;

  private static final int CHUNK = 1 << 11;
  private static final long SEED = 11;

  private Queries() {}

  /** Points within 0.2 mm, in each coordinate, of vertices spread over the mesh. */
  static float[] nearPoints(TriangleMesh mesh, int count) {
    SplittableRandom random = new SplittableRandom(SEED);
    float[] points = new float[3 * count];
    for (int i = 0; i < count; i++) {
      Vec3 v = mesh.vertex((int) ((long) i * mesh.vertexCount() / count));
      points[3 * i] = (float) (v.x() + random.nextDouble(-0.2, 0.2));
      points[3 * i + 1] = (float) (v.y() + random.nextDouble(-0.2, 0.2));
      points[3 * i + 2] = (float) (v.z() + random.nextDouble(-0.2, 0.2));
    }
    return points;
  }

  /** Points anywhere in the box around the mesh. */
  static float[] pointsAnywhere(TriangleMesh mesh, int count) {
    double[] low = {1e30, 1e30, 1e30};
    double[] high = {-1e30, -1e30, -1e30};
    double[] xyz = mesh.copyOfCoordinates();
    for (int i = 0; i < xyz.length; i++) {
      low[i % 3] = Math.min(low[i % 3], xyz[i]);
      high[i % 3] = Math.max(high[i % 3], xyz[i]);
    }
    SplittableRandom random = new SplittableRandom(SEED);
    float[] points = new float[3 * count];
    for (int i = 0; i < points.length; i++) {
      points[i] = (float) random.nextDouble(low[i % 3], high[i % 3]);
    }
    return points;
  }

  /** Distance of each point to the surface [mm]. */
  static float[] distances(TriangleTree tree, float[] points) {
    float[] distance = new float[points.length / 3];
    Parallel.chunks(
        distance.length,
        CHUNK,
        Watch.NONE,
        (from, to) -> {
          for (int i = from; i < to; i++) {
            Vec3 p = new Vec3(points[3 * i], points[3 * i + 1], points[3 * i + 2]);
            distance[i] = (float) tree.closest(p).orElseThrow().distance();
          }
        });
    return distance;
  }

  /** 1 for each vertex that has any surface above it, else 0. */
  static byte[] hidden(TriangleTree tree, Vec3 axis) {
    TriangleMesh mesh = tree.mesh();
    byte[] hidden = new byte[mesh.vertexCount()];
    Vec3 clear = axis.times(CLEAR_MM);
    Parallel.chunks(
        hidden.length,
        CHUNK,
        Watch.NONE,
        (from, to) -> {
          for (int v = from; v < to; v++) {
            Vec3 start = mesh.vertex(v).plus(clear);
            hidden[v] = (byte) (tree.anyHit(start, axis, Double.POSITIVE_INFINITY) ? 1 : 0);
          }
        });
    return hidden;
  }
}
