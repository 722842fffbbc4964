package rodwork.survey.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.geometry.overhang.PlaceDepths;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Shared;

/** Truth: the depths of the whole cast, to which those of its part must be equal. */
class DepthReachTest {
  private static final long SEED = 11;
  private static final double CONE_DEG = 15;
  private static final OverhangLimits LIMITS = new OverhangLimits(4, 0.5, 0.05);

  private static Overhang.Caster caster(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    return new Overhang.Caster(topology, BoundaryLoops.of(topology));
  }

  /** A path within the cone about +z. */
  private static Vec3 path(Random random) {
    double tilt = Math.toRadians(CONE_DEG) * Math.sqrt(random.nextDouble());
    double turn = 2 * Math.PI * random.nextDouble();
    return new Vec3(
        Math.sin(tilt) * Math.cos(turn), Math.sin(tilt) * Math.sin(turn), Math.cos(tilt));
  }

  /** Returns how many of the depths are above 0. */
  private static int same(TriangleMesh mesh, TriangleMesh part, List<Vec3> places, int paths) {
    Overhang.Caster whole = caster(mesh);
    Overhang.Caster near = caster(part);
    Random random = new Random(SEED);
    int undercut = 0;
    for (int i = 0; i < paths; i++) {
      Vec3 axis = path(random);
      Overhang ofWhole = whole.sparsely(axis, LIMITS, Watch.NONE);
      PlaceDepths ofPart = near.at(places, places, axis, LIMITS, Watch.NONE);
      for (Vec3 place : places) {
        double depth = ofWhole.depthAt(place);
        undercut += depth > 0 ? 1 : 0;
        assertThat(ofPart.depthAt(place))
            .as("seed %s, path %s, depth at %s", SEED, axis, place)
            .isCloseTo(depth, within(1e-5));
        assertThat(ofPart.depthAlong(place, Vec3.X))
            .as("seed %s, path %s, depth along x at %s", SEED, axis, place)
            .isCloseTo(ofWhole.depthAlong(place, Vec3.X), within(1e-5));
      }
    }
    return undercut;
  }

  @Test
  void onARealArchTheDepthsStayAndMostOfItIsLeftOut() {
    TriangleMesh mesh = MeshFiles.read(Shared.file("arches/lower-dense.stl"), Watch.NONE).toMesh();
    Random random = new Random(SEED);
    // Places within 9 mm of one of them, anywhere on crown and gum: as on one abutment.
    Vec3 middle = mesh.vertex(random.nextInt(mesh.vertexCount()));
    List<Vec3> places =
        IntStream.range(0, mesh.vertexCount())
            .mapToObj(mesh::vertex)
            .filter(place -> place.distance(middle) < 9)
            .filter(place -> random.nextInt(40) == 0)
            .toList();
    assertThat(places).hasSizeGreaterThan(50);
    TriangleMesh part = DepthReach.of(mesh, places, Vec3.Z, CONE_DEG, LIMITS.capMm());
    assertThat(part.triangleCount()).isLessThan(mesh.triangleCount() / 2);
    assertThat(same(mesh, part, places, 6)).isGreaterThan(30);
  }

  @Test
  void whatHangsHighOverAPlaceIsKept() {
    // Two balls on top of each other, 14 mm apart: the upper one shades the lower at some paths.
    TriangleMesh mesh =
        Bodies.join(Bodies.sphere(4, 0.6), Bodies.moved(Bodies.sphere(4, 0.6), new Vec3(5, 0, 14)));
    List<Vec3> places = List.of(new Vec3(4, 0, 0), new Vec3(3.9, 0.5, -1), new Vec3(2, 0, -3.4));
    TriangleMesh part = DepthReach.of(mesh, places, Vec3.Z, CONE_DEG, LIMITS.capMm());
    assertThat(same(mesh, part, places, 40)).isGreaterThan(20);
  }

  @Test
  void withoutPlacesNothingIsLeftOut() {
    TriangleMesh mesh = Bodies.sphere(4, 1);
    assertThat(DepthReach.of(mesh, List.of(), Vec3.Z, CONE_DEG, 4)).isSameAs(mesh);
  }
}
