package rodwork.geometry.solid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** Checks that a mesh bounds a body: closed, manifold, turned outwards; and measures the body. */
public final class ClosedSurface {
  private ClosedSurface() {}

  /** Every edge has one triangle each way, every vertex one ring of triangles. */
  public static void check(TriangleMesh mesh) {
    Map<Long, Integer> next = new HashMap<>(6 * mesh.triangleCount());
    int[] valence = new int[mesh.vertexCount()];
    int doubled = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = mesh.corner(t, k);
        int b = mesh.corner(t, (k + 1) % 3);
        if (a == b || next.put(key(a, b), mesh.corner(t, (k + 2) % 3)) != null) {
          doubled++;
        }
        valence[a]++;
      }
    }
    assertThat(doubled).as("edges run twice the same way").isZero();
    int open = 0;
    int pinched = 0;
    boolean[] seen = new boolean[mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = mesh.corner(t, k);
        if (seen[a]) {
          continue;
        }
        seen[a] = true;
        int first = mesh.corner(t, (k + 1) % 3);
        int at = first;
        int ring = 0;
        do {
          at = next.getOrDefault(key(a, at), -1);
          ring++;
        } while (at >= 0 && at != first);
        open += at < 0 ? 1 : 0;
        pinched += at >= 0 && ring != valence[a] ? 1 : 0;
      }
    }
    assertThat(open).as("vertices on an open edge").isZero();
    assertThat(pinched).as("vertices with more than one ring of triangles").isZero();
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
