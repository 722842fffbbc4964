package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Shared;

/** Truth: the closed form of a ball, and {@link Overhang}, to which all must be equal. */
class PlaceDepthsTest {
  private static final long SEED = 5;
  private static final OverhangLimits LIMITS = new OverhangLimits(4, 0.5, 0.05);

  private static Overhang.Caster caster(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    return new Overhang.Caster(topology, BoundaryLoops.of(topology));
  }

  @Test
  void underABallADepthIsWhatItsRadiusLeaves() {
    double radius = 5;
    List<Vec3> places =
        Stream.of(-10.0, -30.0, -55.0)
            .map(Math::toRadians)
            .map(lat -> new Vec3(radius * Math.cos(lat), 0, radius * Math.sin(lat)))
            .toList();
    PlaceDepths depths =
        caster(Bodies.sphere(radius, 0.15)).at(places, List.of(), Vec3.Z, LIMITS, Watch.NONE);
    for (Vec3 place : places) {
      assertThat(depths.depthAt(place)).isCloseTo(radius - place.x(), within(0.01));
      assertThat(depths.riseMm(place)).isCloseTo(-place.z(), within(0.1));
    }
    assertThat(depths.depthAt(new Vec3(radius, 0, 2))).isZero();
    assertThatThrownBy(() -> depths.depthAt(new Vec3(-2, 0, -4.5)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("not prepared");
  }

  @Test
  void onARealArchTheyAreThoseOfTheOverhang() {
    TriangleMesh mesh = MeshFiles.read(Shared.file("arches/upper-16-23.ply"), Watch.NONE).toMesh();
    Overhang.Caster caster = caster(mesh);
    Random random = new Random(SEED);
    int undercut = 0;
    for (int i = 0; i < 12; i++) {
      Vec3 axis =
          new Vec3(0.4 * random.nextGaussian(), 0.4 * random.nextGaussian(), 1 + random.nextInt(2))
              .unit();
      Overhang all = caster.along(axis, LIMITS, Watch.NONE);
      List<Vec3> places =
          Stream.generate(
                  () ->
                      mesh.pointOn(
                          random.nextInt(mesh.triangleCount()),
                          random.nextDouble() / 2,
                          random.nextDouble() / 2))
              .limit(150)
              .toList();
      PlaceDepths some = caster.at(places, places.subList(0, 60), axis, LIMITS, Watch.NONE);
      Vec3 aside = axis.anyPerpendicular();
      for (Vec3 place : places) {
        double depth = all.depthAt(place);
        undercut += depth > 0 ? 1 : 0;
        assertThat(some.depthAt(place))
            .as("seed %s, axis %s, place %s", SEED, axis, place)
            .isCloseTo(depth, within(1e-6));
      }
      for (Vec3 place : places.subList(0, 60)) {
        assertThat(some.depthAlong(place, aside))
            .as("seed %s, axis %s, place %s, along", SEED, axis, place)
            .isCloseTo(all.depthAlong(place, aside), within(1e-6));
      }
    }
    assertThat(undercut).isGreaterThan(200);
  }
}
