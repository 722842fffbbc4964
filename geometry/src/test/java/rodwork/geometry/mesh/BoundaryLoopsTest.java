package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

class BoundaryLoopsTest {
  private static BoundaryLoops loops(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    BoundaryLoops loops = BoundaryLoops.of(topology);
    checkStructure(topology, loops);
    return loops;
  }

  /** Each boundary edge in exactly one loop, consecutive edges joined, no vertex twice. */
  private static void checkStructure(MeshTopology topology, BoundaryLoops loops) {
    int boundary = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      assertThat(loops.loopOf(e) >= 0).as("edge %d", e).isEqualTo(topology.isBoundary(e));
      boundary += topology.isBoundary(e) ? 1 : 0;
    }
    int inLoops = 0;
    for (BoundaryLoop loop : loops.loops()) {
      Set<Integer> vertices = new HashSet<>();
      assertThat(loop.vertexCount()).isEqualTo(loop.edgeCount() + (loop.closed() ? 0 : 1));
      for (int i = 0; i < loop.vertexCount(); i++) {
        assertThat(vertices.add(loop.vertex(i))).as("vertex %d once", loop.vertex(i)).isTrue();
      }
      for (int i = 0; i < loop.edgeCount(); i++) {
        int edge = loop.edge(i);
        assertThat(loops.loopOf(edge)).isEqualTo(loop.id());
        assertThat(Set.of(topology.edgeVertex(edge, 0), topology.edgeVertex(edge, 1)))
            .containsExactlyInAnyOrder(loop.vertex(i), loop.vertex((i + 1) % loop.vertexCount()));
      }
      inLoops += loop.edgeCount();
    }
    assertThat(inLoops).isEqualTo(boundary);
  }

  /** A flat plate of n × n squares of 1 mm, squares left out where {@code gap} says (i + n·j). */
  private static TriangleMesh plate(int n, Set<Integer> gap) {
    double[] xyz = new double[3 * (n + 1) * (n + 1)];
    for (int j = 0; j <= n; j++) {
      for (int i = 0; i <= n; i++) {
        xyz[3 * (i + (n + 1) * j)] = i;
        xyz[3 * (i + (n + 1) * j) + 1] = j;
      }
    }
    int[] corners = new int[6 * n * n];
    int used = 0;
    for (int j = 0; j < n; j++) {
      for (int i = 0; i < n; i++) {
        if (!gap.contains(i + n * j)) {
          int a = i + (n + 1) * j;
          for (int c : new int[] {a, a + 1, a + n + 2, a, a + n + 2, a + n + 1}) {
            corners[used++] = c;
          }
        }
      }
    }
    return TriangleMesh.of(xyz, Arrays.copyOf(corners, used));
  }

  @Test
  void closedBodiesHaveNone() {
    assertThat(loops(Bodies.torus(4, 1, 0.5)).count()).isZero();
  }

  @Test
  void halfSphereHasARimOfItsEquator() {
    BoundaryLoops loops = loops(Reshape.above(Bodies.sphere(4, 0.2), 0));
    assertThat(loops.count()).isEqualTo(1);
    BoundaryLoop rim = loops.loops().getFirst();
    assertThat(rim.kind()).isEqualTo(BoundaryLoop.Kind.RIM);
    assertThat(rim.closed()).isTrue();
    // a zigzag of triangle sides about the circle, twice as long at most
    assertThat(rim.lengthMm()).isBetween(8 * Math.PI * 0.99, 8 * Math.PI * 2);
  }

  @Test
  void aGapInAClosedBodyIsAHole() {
    BoundaryLoops loops = loops(Reshape.only(Bodies.sphere(4, 0.2), t -> t != 100));
    assertThat(loops.count()).isEqualTo(1);
    assertThat(loops.loops().getFirst().edgeCount()).isEqualTo(3);
    assertThat(loops.isHole(loops.loops().getFirst().edge(0))).isTrue();
  }

  @Test
  void rimAndHolesOfAPlate() {
    BoundaryLoops loops = loops(plate(8, Set.of(1 + 8 * 1, 5 + 8 * 5, 5 + 8 * 6)));
    assertThat(loops.rims()).hasSize(1);
    assertThat(loops.rims().getFirst().lengthMm()).isCloseTo(32, within(1e-12));
    assertThat(loops.holes()).extracting(BoundaryLoop::edgeCount).containsExactlyInAnyOrder(4, 6);
  }

  @Test
  void windingGoesRoundWithTheSurfaceOnTheLeft() {
    BoundaryLoop rim = loops(plate(3, Set.of())).loops().getFirst();
    TriangleMesh mesh = plate(3, Set.of());
    double area = 0;
    for (int i = 0; i < rim.vertexCount(); i++) {
      Vec3 a = mesh.vertex(rim.vertex(i));
      Vec3 b = mesh.vertex(rim.vertex((i + 1) % rim.vertexCount()));
      area += a.cross(b).z() / 2;
    }
    assertThat(area).isCloseTo(9, within(1e-12));
  }

  @Test
  void holesThatTouchStayTwo() {
    // squares (3,3) and (4,4) share one corner
    BoundaryLoops loops = loops(plate(8, Set.of(3 + 8 * 3, 4 + 8 * 4)));
    assertThat(loops.rims()).hasSize(1);
    assertThat(loops.holes()).extracting(BoundaryLoop::edgeCount).containsExactly(4, 4);
  }

  @Test
  void aHoleThatTouchesTheRimStaysAHole() {
    // corner squares cut away make the vertex (1,1) a rim vertex; the square (1,1) touches it there
    BoundaryLoops loops = loops(plate(8, Set.of(0, 1 + 8)));
    assertThat(loops.rims()).hasSize(1);
    assertThat(loops.rims().getFirst().edgeCount()).isEqualTo(32);
    assertThat(loops.holes()).extracting(BoundaryLoop::edgeCount).containsExactly(4);
  }

  @Test
  void surfacesThatTouchAtAVertexKeepTheirRims() {
    TriangleMesh bowTie =
        TriangleMesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, -1, 0, 0, 0, -2, 0},
            new int[] {0, 1, 2, 0, 3, 4});
    assertThat(loops(bowTie).rims()).extracting(BoundaryLoop::edgeCount).containsExactly(3, 3);
  }

  @Test
  void inconsistentWindingDoesNotMatter() {
    TriangleMesh mesh = plate(8, Set.of(9, 45));
    Random random = new Random(7);
    BoundaryLoops loops = loops(Reshape.flipped(mesh, t -> random.nextBoolean()));
    assertThat(loops.rims()).extracting(BoundaryLoop::edgeCount).containsExactly(32);
    assertThat(loops.holes()).extracting(BoundaryLoop::edgeCount).containsExactly(4, 4);
  }

  @Test
  void threeSheetsAtAnEdgeEndTheirChainsThere() {
    TriangleMesh fin =
        TriangleMesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1},
            new int[] {0, 1, 2, 1, 0, 3, 0, 1, 4});
    BoundaryLoops loops = loops(fin);
    assertThat(loops.loops().stream().mapToInt(BoundaryLoop::edgeCount).sum()).isEqualTo(6);
    assertThat(loops.loops()).anyMatch(l -> !l.closed()).anyMatch(BoundaryLoop::closed);
  }

  @Test
  void tangledMeshesKeepTheirPromises() {
    for (long seed = 1; seed <= 300; seed++) {
      Random random = new Random(seed);
      int vertices = 4 + random.nextInt(10);
      double[] xyz = random.doubles(3L * vertices).toArray();
      int[] corners = random.ints(3L * (1 + random.nextInt(30)), 0, vertices).toArray();
      try {
        loops(TriangleMesh.of(xyz, corners));
      } catch (AssertionError e) {
        throw new AssertionError("seed " + seed, e);
      }
    }
  }
}
