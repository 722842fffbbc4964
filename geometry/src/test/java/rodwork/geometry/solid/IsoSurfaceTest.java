package rodwork.geometry.solid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** Against closed forms: sphere, torus, cube; and, for form alone, against random fields. */
class IsoSurfaceTest {
  private static final IsoSurface.Detail FINE = (x, y, z, half) -> true;

  /** How far a chord as long as a cell's diagonal lies from a circle [mm]. */
  private static double sag(double cell, double radius) {
    return 3 * cell * cell / (8 * radius);
  }

  @Test
  void sphere() {
    double r = 5;
    Field sphere = (x, y, z) -> Math.sqrt(x * x + y * y + z * z) - r;
    TriangleMesh mesh = IsoSurface.of(sphere, 0.3, FINE, Vec3.ZERO);
    ClosedSurface.check(mesh);
    assertThat(ClosedSurface.euler(mesh)).isEqualTo(2);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      assertThat(mesh.vertex(v).length()).isCloseTo(r, within(sag(0.3, r)));
    }
    assertThat(ClosedSurface.volume(mesh)).isCloseTo(4 * Math.PI * r * r * r / 3, within(1.5));
    assertThat(ClosedSurface.area(mesh)).isCloseTo(4 * Math.PI * r * r, within(0.6));
  }

  @Test
  void torus() {
    double large = 6;
    double small = 2;
    Field torus = (x, y, z) -> Math.hypot(Math.hypot(x, y) - large, z) - small;
    TriangleMesh mesh = IsoSurface.of(torus, 0.25, FINE, new Vec3(large, 0, 0));
    ClosedSurface.check(mesh);
    assertThat(ClosedSurface.euler(mesh)).isZero();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      assertThat(torus.at(p.x(), p.y(), p.z())).isCloseTo(0, within(sag(0.25, small)));
    }
    assertThat(ClosedSurface.volume(mesh))
        .isCloseTo(2 * Math.PI * Math.PI * large * small * small, within(2.0));
  }

  @Test
  void aTurnedCubeKeepsItsEdges() {
    Vec3 u = new Vec3(1, 2, 2).times(1 / 3.0);
    Vec3 v = new Vec3(2, 1, -2).times(1 / 3.0);
    Vec3 w = new Vec3(-2, 2, -1).times(1 / 3.0);
    Field cube =
        (x, y, z) -> {
          Vec3 p = new Vec3(x, y, z);
          return Math.max(
              Math.abs(p.dot(u)) - 3, Math.max(Math.abs(p.dot(v)) - 3, Math.abs(p.dot(w)) - 3));
        };
    TriangleMesh mesh = IsoSurface.of(cube, 0.4, FINE, Vec3.ZERO);
    ClosedSurface.check(mesh);
    assertThat(ClosedSurface.volume(mesh)).isCloseTo(216, within(1.0));
    double furthest = 0;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      furthest = Math.max(furthest, mesh.vertex(i).length());
    }
    assertThat(furthest).isCloseTo(3 * Math.sqrt(3), within(0.02));
  }

  @Test
  void twoCellSizesMeetWithoutAGap() {
    double r = 20;
    Field sphere = (x, y, z) -> Math.sqrt(x * x + y * y + z * z) - r;
    TriangleMesh fine = IsoSurface.of(sphere, 0.4, FINE, Vec3.ZERO);
    TriangleMesh mixed = IsoSurface.of(sphere, 0.4, (x, y, z, half) -> x + 0.3 * y > 4, Vec3.ZERO);
    ClosedSurface.check(mixed);
    assertThat(ClosedSurface.euler(mixed)).isEqualTo(2);
    assertThat(mixed.triangleCount()).isLessThan(fine.triangleCount() / 2);
    for (int v = 0; v < mixed.vertexCount(); v++) {
      assertThat(mixed.vertex(v).length()).isCloseTo(r, within(sag(1.6, r)));
    }
  }

  /** Waves shorter than two cells: every pattern of corners comes up, none may tear the surface. */
  @Test
  void staysManifoldWhateverTheFieldDoes() {
    long seed = 20260;
    Random random = new Random(seed);
    for (int round = 0; round < 12; round++) {
      double[] wave = random.doubles(12, -3.5, 3.5).toArray();
      Field field =
          (x, y, z) -> {
            double sum = 0.4;
            for (int k = 0; k < 4; k++) {
              sum += Math.sin(wave[3 * k] * x + wave[3 * k + 1] * y + wave[3 * k + 2] * z + k);
            }
            return Math.max(0.3 * sum, Math.sqrt(x * x + y * y + z * z) - 6);
          };
      Vec3 inside = inside(field, random);
      TriangleMesh mesh = IsoSurface.of(field, 0.5, FINE, inside);
      assertThat(mesh.triangleCount()).as("seed %d round %d", seed, round).isGreaterThan(3000);
      ClosedSurface.check(mesh);
    }
  }

  private static Vec3 inside(Field field, Random random) {
    while (true) {
      Vec3 p =
          new Vec3(random.nextDouble(-2, 2), random.nextDouble(-2, 2), random.nextDouble(-2, 2));
      if (field.at(p.x(), p.y(), p.z()) < -0.2) {
        return p;
      }
    }
  }

  @Test
  void sameFieldSameMesh() {
    Field field = (x, y, z) -> Math.sqrt(x * x + 2 * y * y + 3 * z * z) - 4;
    assertThat(IsoSurface.of(field, 0.3, FINE, Vec3.ZERO))
        .isEqualTo(IsoSurface.of(field, 0.3, FINE, Vec3.ZERO));
  }

  @Test
  void refusesASeedOutsideAndASurfaceWithoutEnd() {
    Field ball = (x, y, z) -> Math.sqrt(x * x + y * y + z * z) - 1;
    assertThatThrownBy(() -> IsoSurface.of(ball, 0.3, FINE, new Vec3(2, 0, 0)))
        .hasMessageContaining("does not lie inside");
    assertThatThrownBy(() -> IsoSurface.of((x, y, z) -> x - 1, 0.3, FINE, Vec3.ZERO))
        .hasMessageContaining("no surface above");
  }
}
