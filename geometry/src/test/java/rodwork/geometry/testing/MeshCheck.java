package rodwork.geometry.testing;

import static org.assertj.core.api.Assertions.assertThat;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Verifies what a mesh promises of its structure; fails with the first place that breaks it. */
public final class MeshCheck {
  private MeshCheck() {}

  /** Every edge has two triangles that run along it in opposite directions; every area is > 0. */
  public static void closedAndOriented(TriangleMesh mesh) {
    oriented(mesh);
    MeshTopology topology = MeshTopology.of(mesh);
    for (int e = 0; e < topology.edgeCount(); e++) {
      assertThat(topology.isBoundary(e)).as("edge %d is a boundary", e).isFalse();
    }
  }

  /** As {@link #closedAndOriented}, but edges with one triangle are allowed. */
  public static void oriented(TriangleMesh mesh) {
    assertThat(mesh.triangleCount()).as("triangles").isPositive();
    noDegenerateTriangles(mesh);
    MeshTopology topology = MeshTopology.of(mesh);
    int[] balance = new int[topology.edgeCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int edge = topology.triangleEdge(t, k);
        balance[edge] += mesh.corner(t, k) == topology.edgeVertex(edge, 0) ? 1 : -1;
      }
    }
    for (int e = 0; e < topology.edgeCount(); e++) {
      assertThat(topology.isNonManifold(e)).as("edge %d has over two triangles", e).isFalse();
      assertThat(balance[e])
          .as("both triangles at edge %d run along it in one direction", e)
          .isEqualTo(topology.isBoundary(e) ? Integer.signum(balance[e]) : 0);
    }
  }

  public static void noDegenerateTriangles(TriangleMesh mesh) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      assertThat(mesh.area(t)).as("area of triangle %d", t).isPositive();
    }
  }

  /** Volume inside a closed mesh [mm³]; negative where it is inside out. */
  public static double volume(TriangleMesh mesh) {
    double six = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = mesh.vertex(mesh.corner(t, 0));
      six += a.dot(mesh.doubleAreaNormal(t));
    }
    return six / 6;
  }

  public static double longestEdge(TriangleMesh mesh) {
    double longest = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = mesh.vertex(mesh.corner(t, k));
        longest = Math.max(longest, a.distance(mesh.vertex(mesh.corner(t, (k + 1) % 3))));
      }
    }
    return longest;
  }
}
