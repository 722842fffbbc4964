package rodwork.anatomy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Truth: made-up casts whose base is known by construction; real open shells, which have none. */
class AnatomicSurfaceTest {

  static Stream<ModelCast.Form> closedCasts() {
    return ArchFrameFinderTest.closedCasts();
  }

  @ParameterizedTest
  @MethodSource("closedCasts")
  void findsFloorAndWalls(ModelCast.Form form) {
    ModelCast cast = ModelCast.of(form, 3);
    TriangleMesh mesh = Posed.random(2).of(cast.mesh());
    AnatomicSurface surface = AnatomicSurface.of(MeshTopology.of(mesh));
    double base = 0;
    double found = 0;
    double anatomy = 0;
    double eaten = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double area = mesh.area(t);
      boolean said = surface.isBase(t);
      if (cast.isBase().get(t)) {
        base += area;
        found += said ? area : 0;
      } else {
        anatomy += area;
        eaten += said ? area : 0;
      }
    }
    assertThat(found / base).as("share of the base that was found").isGreaterThan(0.99);
    assertThat(eaten / anatomy).as("share of the anatomy taken for base").isLessThan(0.005);
    assertThat(surface.baseShare()).isCloseTo(base / (base + anatomy), within(0.01));
    double tilt = Math.toRadians(form.floorTiltDeg());
    Vec3 floor = Posed.random(2).turn(new Vec3(0, -Math.sin(tilt), -Math.cos(tilt)));
    assertThat(surface.planes().getFirst().outward().angleDegTo(floor)).isLessThan(0.5);
  }

  @Test
  void openShellsFromTheMouthAreAllAnatomy() {
    for (String name : SharedArch.LABELLED) {
      TriangleMesh mesh = SharedArch.load(name).mesh();
      assertThat(AnatomicSurface.of(MeshTopology.of(mesh)).hasBase()).as(name).isFalse();
    }
    for (String name : List.of("upper-free-end", "lower-dense")) {
      TriangleMesh mesh = SharedArch.load(name).mesh();
      assertThat(AnatomicSurface.of(MeshTopology.of(mesh)).hasBase()).as(name).isFalse();
    }
  }

  @Test
  void neverTakesEverything() {
    TriangleMesh box =
        TriangleMesh.of(
            new double[] {0, 0, 0, 40, 0, 0, 40, 40, 0, 0, 40, 0, 20, 20, 1},
            new int[] {0, 2, 1, 0, 3, 2, 0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4});
    AnatomicSurface surface = AnatomicSurface.of(MeshTopology.of(box));
    assertThat(surface.anatomicAreaMm2()).isPositive();
    TriangleMesh nothing = TriangleMesh.of(new double[0], new int[0]);
    assertThat(AnatomicSurface.of(MeshTopology.of(nothing)).baseShare()).isZero();
  }

  @Test
  void canBeCorrected() {
    TriangleMesh mesh = ModelCast.of(closedCasts().findFirst().orElseThrow(), 3).mesh();
    AnatomicSurface found = AnatomicSurface.of(MeshTopology.of(mesh));
    BitSet some = new BitSet();
    some.set(0, 10);
    AnatomicSurface more = found.withBase(mesh, some);
    assertThat(more.isBase(5)).isTrue();
    assertThat(found.isBase(5)).isFalse();
    assertThat(more.withAnatomy(mesh, some).copyOfBase()).isEqualTo(found.copyOfBase());
    assertThat(AnatomicSurface.given(mesh, some).baseTriangleCount()).isEqualTo(10);
    assertThat(AnatomicSurface.whole(mesh).hasBase()).isFalse();
    some.set(mesh.triangleCount());
    assertThatThrownBy(() -> AnatomicSurface.given(mesh, some))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> found.withBase(mesh, some))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
