package rodwork.geometry.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** The volumes are the closed forms of any geometry textbook. */
class BodiesTest {
  private static void check(TriangleMesh mesh, double edge, double volume, double share) {
    MeshCheck.closedAndOriented(mesh);
    assertThat(MeshCheck.longestEdge(mesh)).isLessThanOrEqualTo(edge * (1 + 1e-9));
    assertThat(MeshCheck.volume(mesh)).isCloseTo(volume, within(share * volume));
  }

  @Test
  void sphere() {
    check(Bodies.sphere(4, 0.3), 0.3, 4.0 / 3 * Math.PI * 64, 0.005);
    check(Bodies.sphere(4, 9), 9, 4.0 / 3 * Math.PI * 64, 0.5);
  }

  @Test
  void ellipsoid() {
    check(Bodies.ellipsoid(5, 4, 3, 0.3), 0.3, 4.0 / 3 * Math.PI * 60, 0.005);
  }

  @Test
  void torus() {
    check(Bodies.torus(4, 1.5, 0.3), 0.3, 2 * Math.PI * Math.PI * 4 * 2.25, 0.01);
  }

  @Test
  void cones() {
    check(Bodies.cone(0, 3, 6, 0.5), 0.5, Math.PI * 9 * 6 / 3, 0.01);
    check(Bodies.cone(2, 3, 6, 0.5), 0.5, Math.PI * 6 * (4 + 6 + 9) / 3, 0.01);
    check(Bodies.cylinder(2, 7, 0.4), 0.4, Math.PI * 4 * 7, 0.01);
  }

  @Test
  void prisms() {
    MeshCheck.closedAndOriented(Bodies.step(3, 4, 0.8));
    assertThat(MeshCheck.volume(Bodies.step(3, 4, 0.8)))
        .isCloseTo(16 * (15 * 3 + 5 * 4 + 8 * 2), within(1e-6));
    MeshCheck.closedAndOriented(Bodies.parallelWall(6, 0.5));
    assertThat(MeshCheck.volume(Bodies.box(new Vec3(0, 0, 0), new Vec3(1, 2, 3), 0.4)))
        .isCloseTo(6, within(1e-9));
  }

  @Test
  void reshaping() {
    TriangleMesh two = Bodies.twoSpheres(2, 5, 0.5);
    double volume = MeshCheck.volume(two);
    for (TriangleMesh mesh :
        new TriangleMesh[] {
          Reshape.mirrored(two), Reshape.refined(two), Reshape.turned(two, new Vec3(1, 2, 3), 40)
        }) {
      MeshCheck.closedAndOriented(mesh);
      assertThat(MeshCheck.volume(mesh)).isCloseTo(volume, within(1e-9 * volume));
    }
    MeshCheck.oriented(Reshape.above(two, 0.3));
  }
}
