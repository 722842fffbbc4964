package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.MeshCheck;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** Truth: closed forms of the bodies, and distances by the triangle tree. */
class ThinningTest {
  private static final double ERROR_MM = 0.01;

  @Test
  void aSphereStaysASphereOfFarFewerTriangles() {
    TriangleMesh fine = Bodies.sphere(5, 0.2);
    TriangleMesh thin = Thinning.of(fine, ERROR_MM, Watch.NONE);
    MeshCheck.closedAndOriented(thin);
    assertThat(thin.triangleCount()).isLessThan(fine.triangleCount() / 5);
    for (int t = 0; t < thin.triangleCount(); t++) {
      assertThat(thin.pointOn(t, 1.0 / 3, 1.0 / 3).length()).isBetween(5 - 4 * ERROR_MM, 5.02);
    }
    assertThat(MeshCheck.volume(thin))
        .isCloseTo(MeshCheck.volume(fine), within(ERROR_MM * 4 * Math.PI * 25));
  }

  @Test
  void aFlatPlateIsThinnedToNearlyNothingAndItsBorderStays() {
    TriangleMesh plate = plate(20, 16, 0.5);
    TriangleMesh thin = Thinning.of(plate, ERROR_MM, Watch.NONE);
    assertThat(thin.triangleCount()).isLessThan(plate.triangleCount() / 4);
    assertThat(area(thin)).isCloseTo(80, within(0.4));
    assertThat(List.of(Vec3.ZERO, new Vec3(10, 0, 0), new Vec3(10, 8, 0), new Vec3(0, 8, 0)))
        .allSatisfy(
            corner ->
                assertThat(TriangleTree.of(thin).closest(corner).orElseThrow().distance())
                    .isLessThan(2 * ERROR_MM));
    for (int v = 0; v < thin.vertexCount(); v++) {
      assertThat(thin.z(v)).isCloseTo(0, within(1e-6));
    }
  }

  private static TriangleMesh plate(int nx, int ny, double step) {
    double[] xyz = new double[3 * (nx + 1) * (ny + 1)];
    List<Integer> corners = new ArrayList<>();
    for (int j = 0; j <= ny; j++) {
      for (int i = 0; i <= nx; i++) {
        int v = j * (nx + 1) + i;
        xyz[3 * v] = i * step;
        xyz[3 * v + 1] = j * step;
        if (i < nx && j < ny) {
          corners.addAll(List.of(v, v + 1, v + nx + 1, v + 1, v + nx + 2, v + nx + 1));
        }
      }
    }
    return TriangleMesh.of(xyz, corners.stream().mapToInt(Integer::intValue).toArray());
  }

  private static double area(TriangleMesh mesh) {
    double sum = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      sum += mesh.area(t);
    }
    return sum;
  }

  @Test
  void theSameMeshGivesTheSameAnswer() {
    TriangleMesh rough = Reshape.roughened(Bodies.torus(8, 3, 0.3), 0.005, 7);
    assertThat(Thinning.of(rough, ERROR_MM, Watch.NONE))
        .isEqualTo(Thinning.of(rough, ERROR_MM, Watch.NONE));
  }

  @Test
  void aRealScanKeepsItsSurface() {
    TriangleMesh scan = MeshFiles.read(Shared.file("arches/lower-dense.stl"), Watch.NONE).toMesh();
    TriangleMesh thin = Thinning.of(scan, ERROR_MM, Watch.NONE);
    assertThat(thin.triangleCount()).isLessThan(scan.triangleCount() / 5);
    TriangleTree tree = TriangleTree.of(thin);
    double[] off = new double[scan.vertexCount() / 7];
    for (int i = 0; i < off.length; i++) {
      off[i] = tree.closest(scan.vertex(7 * i)).orElseThrow().distance();
    }
    Arrays.sort(off);
    assertThat(off[off.length / 2]).as("median [mm]").isLessThan(ERROR_MM);
    assertThat(off[off.length * 99 / 100]).as("99 in 100 [mm]").isLessThan(3 * ERROR_MM);
  }

  @Test
  void itCanBeStoppedAndAsksForAnError() {
    TriangleMesh mesh = Bodies.sphere(5, 0.5);
    Watch stopped =
        new Watch() {
          @Override
          public void progress(String what, double share) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    assertThatThrownBy(() -> Thinning.of(mesh, ERROR_MM, stopped))
        .isInstanceOf(CancellationException.class);
    assertThatThrownBy(() -> Thinning.of(mesh, 0, Watch.NONE)).hasMessageContaining("above 0 mm");
  }
}
