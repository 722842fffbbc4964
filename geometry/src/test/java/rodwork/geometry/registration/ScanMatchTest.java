package rodwork.geometry.registration;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** Real arches laid on themselves. Truth: the motion that was applied. */
class ScanMatchTest {
  private static final long SEED = 3;

  @Test
  void aTurnedScanIsLaidBack() throws Exception {
    TriangleMesh cast = arch("upper-14");
    Random random = new Random(SEED);
    for (int i = 0; i < 4; i++) {
      RigidMotion motion = RigidMotionTest.random(random);
      Registration found = match(Reshape.each(cast, motion::point), cast);
      assertThat(off(found, motion)).as("seed %s, try %s: %s", SEED, i, found).isLessThan(0.01);
      assertThat(found.share()).isEqualTo(1);
    }
  }

  @Test
  void halfAScanWithNoiseAndLooseRubbishIsLaidBack() throws Exception {
    TriangleMesh cast = arch("lower-35");
    double middle = 0;
    for (int v = 0; v < cast.vertexCount(); v++) {
      middle += cast.x(v) / cast.vertexCount();
    }
    double cut = middle + 8;
    Random random = new Random(SEED);
    for (int i = 0; i < 3; i++) {
      RigidMotion motion = RigidMotionTest.random(random);
      TriangleMesh part =
          Reshape.only(cast, t -> cast.vertex(cast.corner(t, 0)).x() < cut || t % 50 == 0);
      TriangleMesh scan = Reshape.roughened(Reshape.each(part, motion::point), 0.02, SEED + i);
      Registration found = match(scan, cast);
      assertThat(off(found, motion)).as("seed %s, try %s: %s", SEED, i, found).isLessThan(0.1);
      assertThat(found.share()).isGreaterThan(0.9);
    }
  }

  @Test
  void anotherMouthDoesNotFit() throws Exception {
    Registration wrong = match(arch("upper-11"), arch("upper-14"));
    assertThat(wrong.share()).as("%s", wrong).isLessThan(0.6);
    Registration lower = match(arch("lower-35"), arch("lower-35-37-47"));
    assertThat(lower.share()).as("%s", lower).isLessThan(0.6);
  }

  /** Angle by which the found motion misses the way back of the true one [degrees]. */
  private static double off(Registration found, RigidMotion truth) {
    return found.motion().after(truth).angleDeg();
  }

  private static Registration match(TriangleMesh moving, TriangleMesh fixed) {
    IntPredicate all = t -> true;
    List<Vec3> points = SurfaceSample.of(moving, all, 12_000);
    List<Vec3> where = SurfaceSample.of(fixed, all, 4_000);
    return ScanMatch.find(points, TriangleTree.of(fixed), where, List.of(), Watch.NONE);
  }

  private static TriangleMesh arch(String name) throws IOException {
    return MeshFiles.read(Shared.file("arches/" + name + ".ply"), Watch.NONE).toMesh();
  }
}
