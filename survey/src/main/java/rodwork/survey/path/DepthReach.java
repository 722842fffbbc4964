package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The part of a cast that can tell in the undercut depth of some places, along every path of a
 * cone.
 *
 * <p>The depth of a place is found on what reaches its level within the cap of depths, sideways.
 * What is left out lies below every place that is near enough, or too far from all of them, at each
 * of these paths; so the depths are those of the whole cast.
 *
 * <p>With d the way from a place to a point of the cast, z its part along the occlusal direction
 * and s the rest, a path within the cone θ sees the point at a height of at most {@code z·cos θ +
 * s·sin θ} and at a distance of at least {@code s·cos θ − |z|·sin θ}.
 */
final class DepthReach {
  /** Triangles are judged together in cubes of this side [mm]. */
  private static final double CUBE_MM = 1;

  /** Kept beyond what the bounds ask for, so that no rounding tells [mm]. */
  private static final double SLACK_MM = 0.3;

  private DepthReach() {}

  /**
   * The triangles that matter, with the vertices they use; the whole mesh where nothing is asked
   * for.
   *
   * @param places whose depths will be asked for [scan frame, mm]
   * @param up the middle of the cone [unit vector]
   * @param coneDeg widest angle of a path from there [degrees]
   * @param capMm cap of the depths [mm]
   */
  static TriangleMesh of(
      TriangleMesh mesh, List<Vec3> places, Vec3 up, double coneDeg, double capMm) {
    if (places.isEmpty()) {
      return mesh;
    }
    Map<Long, List<Integer>> cubes = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      cubes.computeIfAbsent(cube(mesh.pointOn(t, 1 / 3.0, 1 / 3.0)), c -> new ArrayList<>()).add(t);
    }
    Reach reach = new Reach(places, up, Math.toRadians(coneDeg), capMm);
    int[] kept =
        cubes.values().parallelStream()
            .filter(cube -> reach.holds(mesh, cube))
            .flatMapToInt(cube -> cube.stream().mapToInt(Integer::intValue))
            .sorted()
            .toArray();
    return part(mesh, kept);
  }

  private static long cube(Vec3 p) {
    long i = (long) Math.floor(p.x() / CUBE_MM) & 0x1fffff;
    long j = (long) Math.floor(p.y() / CUBE_MM) & 0x1fffff;
    long k = (long) Math.floor(p.z() / CUBE_MM) & 0x1fffff;
    return i << 42 | j << 21 | k;
  }

  private static TriangleMesh part(TriangleMesh mesh, int[] triangles) {
    int[] place = new int[mesh.vertexCount()];
    Arrays.fill(place, -1);
    double[] xyz = new double[3 * mesh.vertexCount()];
    int[] corners = new int[3 * triangles.length];
    int used = 0;
    for (int i = 0; i < corners.length; i++) {
      int v = mesh.corner(triangles[i / 3], i % 3);
      if (place[v] < 0) {
        xyz[3 * used] = mesh.x(v);
        xyz[3 * used + 1] = mesh.y(v);
        xyz[3 * used + 2] = mesh.z(v);
        place[v] = used++;
      }
      corners[i] = place[v];
    }
    return TriangleMesh.of(Arrays.copyOf(xyz, 3 * used), corners);
  }

  private static final class Reach {
    private final double[] places;
    private final Vec3 up;
    private final double cos;
    private final double sin;
    private final double capMm;

    Reach(List<Vec3> places, Vec3 up, double cone, double capMm) {
      this.places = places.stream().flatMapToDouble(Reach::numbers).toArray();
      this.up = up;
      this.cos = Math.cos(cone);
      this.sin = Math.sin(cone);
      this.capMm = capMm;
    }

    private static DoubleStream numbers(Vec3 p) {
      return DoubleStream.of(p.x(), p.y(), p.z());
    }

    /** Whether anything in a ball about these triangles can matter to a place. */
    boolean holds(TriangleMesh mesh, List<Integer> triangles) {
      Vec3 middle = mesh.vertex(mesh.corner(triangles.getFirst(), 0));
      double radius =
          triangles.stream()
              .flatMapToInt(
                  t -> IntStream.of(mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)))
              .mapToDouble(v -> mesh.vertex(v).distance(middle))
              .max()
              .orElse(0);
      double slack = radius + SLACK_MM;
      for (int i = 0; i < places.length; i += 3) {
        double x = middle.x() - places[i];
        double y = middle.y() - places[i + 1];
        double z = middle.z() - places[i + 2];
        double rise = x * up.x() + y * up.y() + z * up.z();
        double aside = Math.sqrt(Math.max(0, x * x + y * y + z * z - rise * rise));
        if (rise * cos + aside * sin >= -slack
            && aside * cos - Math.abs(rise) * sin <= capMm + slack) {
          return true;
        }
      }
      return false;
    }
  }
}
