package rodwork.anatomy.occlusion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;

/** Room to the opposing teeth against closed forms: a slanting plane over a level one. */
class ClearanceTest {
  private static final int SIDE = 41;

  @Test
  void aSlantingPlaneOverALevelOne() {
    Arch arch = arch();
    Clearance clearance = Clearance.of(arch, sheet(3, 0.1), RigidMotion.NONE);
    float[] map = clearance.map(Watch.NONE);
    for (int v = 0; v < map.length; v++) {
      Vec3 p = arch.mesh().vertex(v);
      double truth = 3 + 0.1 * p.x();
      if (truth > -Clearance.MOST_OVERLAP_MM + 0.01
          && Math.abs(p.x()) < 19
          && Math.abs(p.y()) < 19) {
        assertThat((double) map[v]).as("at %s", p).isCloseTo(truth, within(1e-5));
      }
    }
    assertThat(clearance.at(new Vec3(5, 3, 0))).isCloseTo(3.5, within(1e-9));
    assertThat(clearance.at(new Vec3(5, 3, 4))).as("into each other").isCloseTo(-0.5, within(1e-9));
  }

  @Test
  void notKnownWhereNothingOpposes() {
    Clearance clearance = Clearance.of(arch(), sheet(3, 0), RigidMotion.NONE);
    assertThat(clearance.at(new Vec3(80, 0, 0))).isNaN();
    assertThat(clearance.at(new Vec3(0, 0, -40))).as("beyond the limit").isNaN();
  }

  @Test
  void anOpposingScanInItsOwnFrame() {
    RigidMotion motion =
        RigidMotion.shift(new Vec3(7, 8, -90)).after(RigidMotion.turn(new Vec3(1, 2, 3), 2.5));
    TriangleMesh elsewhere = Reshape.each(sheet(3, 0.1), motion::point);
    Clearance clearance = Clearance.of(arch(), elsewhere, motion.inverse());
    assertThat(clearance.at(new Vec3(5, 3, 0))).isCloseTo(3.5, within(1e-6));
  }

  private static Arch arch() {
    TriangleMesh mesh = sheet(0, 0);
    return new Arch(
        MeshTopology.of(mesh),
        AnatomicSurface.whole(mesh),
        new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.LOWER, 0, 0));
  }

  private static TriangleMesh sheet(double height, double slope) {
    double[] xyz = new double[3 * SIDE * SIDE];
    int[] corners = new int[6 * (SIDE - 1) * (SIDE - 1)];
    int c = 0;
    for (int i = 0; i < SIDE; i++) {
      for (int j = 0; j < SIDE; j++) {
        int v = i * SIDE + j;
        xyz[3 * v] = i - 20;
        xyz[3 * v + 1] = j - 20;
        xyz[3 * v + 2] = height + slope * (i - 20);
        if (i + 1 < SIDE && j + 1 < SIDE) {
          for (int k : new int[] {v, v + SIDE, v + SIDE + 1, v, v + SIDE + 1, v + 1}) {
            corners[c++] = k;
          }
        }
      }
    }
    return TriangleMesh.of(xyz, corners);
  }
}
