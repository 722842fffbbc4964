package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.Jaw;
import rodwork.geometry.solid.ClosedSurface;

/** What holds for both casts as files: closed, manifold, of the promised size, always the same. */
class DemoCastTest {
  @ParameterizedTest
  @EnumSource(
      value = Jaw.class,
      names = {"LOWER", "UPPER"})
  void isAClosedBodyOfThePromisedSize(Jaw jaw) {
    DemoCast cast = Casts.of(jaw);
    ClosedSurface.check(cast.mesh());
    assertThat(ClosedSurface.euler(cast.mesh())).isEqualTo(2);
    assertThat(ClosedSurface.volume(cast.mesh())).isBetween(20_000.0, 90_000.0);
    assertThat(cast.mesh().triangleCount()).isBetween(200_000, 300_000);
  }

  @ParameterizedTest
  @EnumSource(
      value = Jaw.class,
      names = {"LOWER", "UPPER"})
  void isTheSameOnEveryRun(Jaw jaw) {
    DemoCast again = jaw == Jaw.LOWER ? DemoCast.lower() : DemoCast.upper();
    assertThat(again.mesh()).isEqualTo(Casts.of(jaw).mesh());
  }

  @ParameterizedTest
  @EnumSource(
      value = Jaw.class,
      names = {"LOWER", "UPPER"})
  void everyTriangleHasALabel(Jaw jaw) {
    DemoCast cast = Casts.of(jaw);
    int[] count = new int[50];
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      count[cast.label(t) + 1]++;
    }
    assertThat(count[0]).as("base").isGreaterThan(1000);
    assertThat(count[1]).as("gum").isGreaterThan(50_000);
    int labelled = count[0] + count[1];
    for (DemoTooth tooth : cast.teeth()) {
      assertThat(count[tooth.fdi() + 1]).as("triangles of %d", tooth.fdi()).isGreaterThan(800);
      labelled += count[tooth.fdi() + 1];
    }
    assertThat(labelled).isEqualTo(cast.mesh().triangleCount());
  }
}
