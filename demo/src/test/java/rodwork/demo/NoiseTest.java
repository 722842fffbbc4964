package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.solid.IsoSurface;

/** On a sphere, where the movement along the normal is the change of the radius. */
class NoiseTest {
  // No static field: a lambda of a class that is still being set up would lock out other threads.
  private final TriangleMesh sphere =
      IsoSurface.of(
          (x, y, z) -> Math.sqrt(x * x + y * y + z * z) - 6, 0.3, (x, y, z, h) -> true, Vec3.ZERO);

  @Test
  void movesVerticesByFiveToTenMicrometres() {
    TriangleMesh rough = Noise.on(sphere, 7);
    double sum = 0;
    for (int v = 0; v < rough.vertexCount(); v++) {
      double moved = rough.vertex(v).distance(sphere.vertex(v));
      assertThat(moved).isLessThan(0.022);
      sum += moved * moved;
    }
    assertThat(Math.sqrt(sum / rough.vertexCount())).isBetween(0.005, 0.010);
  }

  @Test
  void isTheSameForTheSameSeedAndOtherForAnother() {
    assertThat(Noise.on(sphere, 7)).isEqualTo(Noise.on(sphere, 7));
    assertThat(Noise.on(sphere, 7)).isNotEqualTo(Noise.on(sphere, 8));
  }
}
