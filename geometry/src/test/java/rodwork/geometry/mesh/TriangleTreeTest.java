package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/** Truth: brute force over all triangles with other formulas, and closed forms. */
class TriangleTreeTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  private static final List<TriangleMesh> MESHES =
      List.of(
          Reshape.roughened(Bodies.torus(5, 2, 1), 0.1, 1),
          Bodies.step(3, 4, 3),
          Bodies.join(Bodies.sphere(0.01, 0.01), Bodies.sphere(40, 20)),
          TriangleMesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2}));

  private static Vec3 random(Random random, double size) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
        .times(size);
  }

  /** Distance to a triangle: to its plane where the foot is inside, else to the nearest side. */
  private static double distance(TriangleMesh mesh, int t, Vec3 p) {
    Vec3[] c = corners(mesh, t);
    Vec3 n = mesh.doubleAreaNormal(t);
    double nearest = INFINITE;
    boolean inside = n.length() > 0;
    for (int k = 0; k < 3; k++) {
      Vec3 a = c[k];
      Vec3 side = c[(k + 1) % 3].minus(a);
      double s = Math.clamp(p.minus(a).dot(side) / side.dot(side), 0, 1);
      nearest = Math.min(nearest, p.distance(a.plus(side.times(s))));
      inside &= n.cross(side).dot(p.minus(a)) >= 0;
    }
    return inside ? Math.abs(n.unit().dot(p.minus(c[0]))) : nearest;
  }

  private static Vec3[] corners(TriangleMesh mesh, int t) {
    return new Vec3[] {
      mesh.vertex(mesh.corner(t, 0)), mesh.vertex(mesh.corner(t, 1)), mesh.vertex(mesh.corner(t, 2))
    };
  }

  /** Möller and Trumbore's test, J. Graphics Tools 2(1), 1997: another formula than the tree's. */
  private static double hit(TriangleMesh mesh, int t, Vec3 origin, Vec3 direction) {
    Vec3[] c = corners(mesh, t);
    Vec3 e1 = c[1].minus(c[0]);
    Vec3 e2 = c[2].minus(c[0]);
    Vec3 p = direction.cross(e2);
    double det = e1.dot(p);
    if (det == 0) {
      return INFINITE;
    }
    Vec3 s = origin.minus(c[0]);
    double u = s.dot(p) / det;
    Vec3 q = s.cross(e1);
    double v = direction.dot(q) / det;
    double distance = e2.dot(q) / det;
    return u >= 0 && v >= 0 && u + v <= 1 && distance >= 0 ? distance : INFINITE;
  }

  @Test
  void closestPointsAreThoseOfBruteForce() {
    Random random = new Random(17);
    for (TriangleMesh mesh : MESHES) {
      TriangleTree tree = TriangleTree.of(mesh);
      for (int i = 0; i < 300; i++) {
        Vec3 p = random(random, i % 2 == 0 ? 3 : 30);
        double truth = INFINITE;
        for (int t = 0; t < mesh.triangleCount(); t++) {
          truth = Math.min(truth, distance(mesh, t, p));
        }
        SurfacePoint found = tree.closest(p).orElseThrow();
        assertThat(found.distance())
            .as("%s in %s, seed 17", p, mesh)
            .isCloseTo(truth, within(1e-9));
        assertThat(found.point().distance(p)).isCloseTo(truth, within(1e-9));
        assertThat(distance(mesh, found.triangle(), found.point())).isLessThan(1e-9);
        assertThat(tree.closest(p, truth * 0.999 - 1e-9)).isEmpty();
        assertThat(tree.closest(p, truth * 1.001 + 1e-9)).isPresent();
      }
    }
  }

  @Test
  void raysHitAsBruteForceSays() {
    Random random = new Random(18);
    int hits = 0;
    for (TriangleMesh mesh : MESHES) {
      TriangleTree tree = TriangleTree.of(mesh);
      for (int i = 0; i < 400; i++) {
        Vec3 origin = random(random, 8);
        Vec3 direction = random(random, i % 3 == 0 ? 0.1 : 10);
        double truth = INFINITE;
        for (int t = 0; t < mesh.triangleCount(); t++) {
          truth = Math.min(truth, hit(mesh, t, origin, direction));
        }
        Optional<SurfacePoint> found = tree.firstHit(origin, direction, INFINITE);
        assertThat(found.isPresent()).as("ray %d, seed 18", i).isEqualTo(truth < INFINITE);
        assertThat(tree.anyHit(origin, direction, INFINITE)).isEqualTo(truth < INFINITE);
        if (found.isPresent()) {
          hits++;
          assertThat(found.get().distance()).isCloseTo(truth, within(1e-9 * (1 + truth)));
          assertThat(tree.firstHit(origin, direction, truth * 0.999)).isEmpty();
          assertThat(tree.anyHit(origin, direction, truth * 0.999)).isFalse();
        }
      }
    }
    assertThat(hits).isGreaterThan(400);
  }

  @Test
  void raysNeverSlipThroughEdgesAndVertices() {
    TriangleMesh sphere = Bodies.sphere(10, 2);
    TriangleTree tree = TriangleTree.of(sphere);
    MeshTopology topology = MeshTopology.of(sphere);
    for (int e = 0; e < topology.edgeCount(); e++) {
      Vec3 a = sphere.vertex(topology.edgeVertex(e, 0));
      Vec3 b = sphere.vertex(topology.edgeVertex(e, 1));
      for (double s : new double[] {0, 0.3, 0.5}) {
        Vec3 direction = a.times(1 - s).plus(b.times(s));
        assertThat(tree.anyHit(Vec3.ZERO, direction, 2)).as("edge %d at %s", e, s).isTrue();
      }
    }
  }

  @Test
  void raysAlongTheAxesWithinAWall() {
    TriangleTree tree = TriangleTree.of(Bodies.box(new Vec3(0, 0, 0), new Vec3(2, 2, 2), 0.5));
    for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
      Vec3 start = new Vec3(1, 1, 1).across(axis).plus(axis.times(-5));
      assertThat(tree.firstHit(start, axis, INFINITE).orElseThrow().distance()).isEqualTo(5);
      // along a face: the ray lies in the sides of its boxes and meets the far and near walls there
      assertThat(tree.anyHit(axis.times(-5), axis, INFINITE)).isTrue();
    }
    assertThatThrownBy(() -> tree.anyHit(Vec3.ZERO, Vec3.ZERO, 1)).hasMessageContaining("no ray");
  }

  @Test
  void closestPointsOnASphereAreRadial() {
    TriangleTree tree = TriangleTree.of(Bodies.sphere(10, 0.3));
    Random random = new Random(19);
    for (int i = 0; i < 200; i++) {
      Vec3 p = random(random, 10);
      // the mesh lies inside the sphere by at most edge² / 6 r = 0.0015
      assertThat(tree.closest(p).orElseThrow().distance())
          .isCloseTo(Math.abs(p.length() - 10), within(0.0016));
    }
  }

  @Test
  void theLowestTriangleWinsATie() {
    TriangleMesh twice = Bodies.join(Bodies.sphere(10, 3), Bodies.sphere(10, 3));
    TriangleTree tree = TriangleTree.of(twice);
    Random random = new Random(20);
    for (int i = 0; i < 100; i++) {
      Vec3 p = random(random, 10);
      assertThat(tree.closest(p).orElseThrow().triangle()).isLessThan(twice.triangleCount() / 2);
      assertThat(tree.firstHit(Vec3.ZERO, p, INFINITE).orElseThrow().triangle())
          .isLessThan(twice.triangleCount() / 2);
    }
  }

  @Test
  void nearPlaneNamesEveryTriangleThatMeetsTheSlab() {
    TriangleMesh mesh = MESHES.getFirst();
    TriangleTree tree = TriangleTree.of(mesh);
    Random random = new Random(21);
    for (int i = 0; i < 50; i++) {
      Plane plane = Plane.through(random(random, 2), random(random, 1));
      BitSet named = new BitSet();
      tree.nearPlane(plane, 0.2, t -> named.set(t));
      for (int t = 0; t < mesh.triangleCount(); t++) {
        double low = INFINITE;
        double high = -INFINITE;
        for (Vec3 c : corners(mesh, t)) {
          low = Math.min(low, plane.distance(c));
          high = Math.max(high, plane.distance(c));
        }
        assertThat(named.get(t) || low > 0.2 || high < -0.2).isTrue();
      }
      assertThat(named.cardinality()).isLessThan(mesh.triangleCount() / 2);
    }
  }

  @Test
  void manyTrianglesInOnePlace() {
    double[] xyz = {0, 0, 0, 1, 0, 0, 0, 1, 0};
    int[] corners = new int[3000];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = i % 3;
    }
    TriangleTree tree = TriangleTree.of(TriangleMesh.of(xyz, corners));
    assertThat(tree.closest(new Vec3(0, 0, 2)).orElseThrow())
        .isEqualTo(new SurfacePoint(0, Vec3.ZERO, 2));
  }

  @Test
  void anEmptyMeshHasNothing() {
    TriangleTree tree = TriangleTree.of(TriangleMesh.of(new double[0], new int[0]));
    assertThat(tree.closest(Vec3.ZERO)).isEmpty();
    assertThat(tree.anyHit(Vec3.ZERO, Vec3.X, INFINITE)).isFalse();
  }
}
