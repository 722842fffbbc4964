package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Reshape;

/**
 * A valley that comes out from under a fold through an opening of a micrometre was once missed on
 * refined meshes: the depth read 0.3 mm and more where it is next to nothing. Truth: rays every
 * quarter degree in steps of 0.003 mm, brute force, rounded up to the next step.
 */
class NarrowOpeningTest {
  @ParameterizedTest
  @CsvSource({
    "108, -0.13317031554089986, -0.037805604260128245, 31, 0.003",
    "104, 0.25759319281792403, 0.48219794973810150, 207, 0.003",
    "112, 0.62729889387847070, -0.71373551839007040, 207, 0.099",
    "113, 1.0, 0.0, 375, 0.969"
  })
  void isFound(long lump, double x, double y, int vertex, double truth) {
    TriangleMesh mesh = OverhangWitnessTest.lump(lump, 0.9);
    Vec3 axis = new Vec3(x, y, 1).unit();
    assertThat(Overhangs.of(mesh, axis).depth(vertex)).isCloseTo(truth, within(0.005));
    assertThat(Overhangs.of(Reshape.refined(mesh), axis).depth(vertex))
        .isCloseTo(truth, within(0.005));
  }
}
