package rodwork.geometry.solid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** Checks that a mesh bounds a body: closed, manifold, turned outwards; and measures the body. */
public final class ClosedSurface {
  private ClosedSurface() {}

  /** Every edge has one triangle each way, every vertex one ring of triangles. */
  public static void check(TriangleMesh mesh) {
    Map<Long, Integer> next = new HashMap<>();
    Map<Integer, Integer> valence = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = mesh.corner(t, k);
        int b = mesh.corner(t, (k + 1) % 3);
        int c = mesh.corner(t, (k + 2) % 3);
        assertThat(a).as("corners of triangle %d", t).isNotEqualTo(b);
        assertThat(next.put(key(a, b), c)).as("edge %d-%d one way", a, b).isNull();
        valence.merge(a, 1, Integer::sum);
      }
    }
    Set<Integer> seen = new HashSet<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = mesh.corner(t, k);
        int first = mesh.corner(t, (k + 1) % 3);
        if (!seen.add(a)) {
          continue;
        }
        int ring = 0;
        int at = first;
        do {
          int on = next.getOrDefault(key(a, at), -1);
          assertThat(on).as("the edge %d-%d has a triangle on both sides", a, at).isNotNegative();
          at = on;
          ring++;
        } while (at != first);
        assertThat(ring).as("triangles in the one ring of vertex %d", a).isEqualTo(valence.get(a));
      }
    }
  }

  private static long key(int a, int b) {
    return (long) a << 32 | b;
  }

  /** Enclosed volume [mm³]; positive where triangles are turned outwards. */
  public static double volume(TriangleMesh mesh) {
    double six = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = mesh.vertex(mesh.corner(t, 0));
      Vec3 b = mesh.vertex(mesh.corner(t, 1));
      Vec3 c = mesh.vertex(mesh.corner(t, 2));
      six += a.dot(b.cross(c));
    }
    return six / 6;
  }

  /** Area [mm²]. */
  public static double area(TriangleMesh mesh) {
    double sum = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      sum += mesh.area(t);
    }
    return sum;
  }

  /** Vertices − edges + triangles: 2 for each sphere, 0 for each torus. */
  public static int euler(TriangleMesh mesh) {
    return mesh.vertexCount() - mesh.triangleCount() / 2;
  }
}
