package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/** Truth: circles and rectangles of bodies of closed form, and brute-force properties. */
class SectionTest {
  private static List<SectionLine> cut(TriangleMesh mesh, Plane plane) {
    MeshTopology topology = MeshTopology.of(mesh);
    List<SectionLine> lines = Section.of(topology, plane);
    for (SectionLine line : lines) {
      check(mesh, plane, line);
    }
    List<SectionLine> withTree = Section.of(topology, TriangleTree.of(mesh), plane);
    assertThat(withTree.toString()).isEqualTo(lines.toString());
    return lines;
  }

  /** Points in the plane and distinct from the next, segments on their triangles. */
  private static void check(TriangleMesh mesh, Plane plane, SectionLine line) {
    assertThat(line.segmentCount()).isEqualTo(line.pointCount() - (line.closed() ? 0 : 1));
    for (int i = 0; i < line.segmentCount(); i++) {
      Vec3 a = line.point(i);
      Vec3 b = line.point((i + 1) % line.pointCount());
      assertThat(Math.abs(plane.distance(a))).isLessThan(1e-9);
      assertThat(a).isNotEqualTo(b);
      int t = line.triangle(i);
      Vec3 middle = a.plus(b).times(0.5);
      Vec3 normal = mesh.doubleAreaNormal(t);
      for (int k = 0; k < 3; k++) {
        Vec3 corner = mesh.vertex(mesh.corner(t, k));
        Vec3 side = mesh.vertex(mesh.corner(t, (k + 1) % 3)).minus(corner);
        assertThat(normal.cross(side).dot(middle.minus(corner))).isGreaterThan(-1e-9);
      }
    }
  }

  /** Area inside a closed line, positive counter-clockwise seen against the normal. */
  private static double area(SectionLine line, Vec3 normal) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < line.pointCount(); i++) {
      sum = sum.plus(line.point(i).cross(line.point((i + 1) % line.pointCount())));
    }
    return sum.dot(normal) / 2;
  }

  @Test
  void aSphereIsCutInACircle() {
    TriangleMesh sphere = Bodies.sphere(10, 0.3);
    for (double height : new double[] {-9, -3.3, 0, 6}) {
      Vec3 axis = new Vec3(1, 2, -2).unit();
      List<SectionLine> lines = cut(sphere, new Plane(axis, height));
      assertThat(lines).hasSize(1);
      assertThat(lines.getFirst().closed()).isTrue();
      double radius = Math.sqrt(100 - height * height);
      assertThat(lines.getFirst().lengthMm()).isCloseTo(2 * Math.PI * radius, within(0.02));
      assertThat(area(lines.getFirst(), axis)).isCloseTo(Math.PI * radius * radius, within(0.1));
    }
  }

  @Test
  void aTorusIsCutInTwoCirclesOneInsideTheOther() {
    List<SectionLine> lines = cut(Bodies.torus(6, 2, 0.3), new Plane(Vec3.Z, 0));
    assertThat(lines).hasSize(2).allMatch(SectionLine::closed);
    double[] areas = lines.stream().mapToDouble(l -> area(l, Vec3.Z)).sorted().toArray();
    assertThat(areas[0]).isCloseTo(-16 * Math.PI, within(0.2));
    assertThat(areas[1]).isCloseTo(64 * Math.PI, within(0.2));
  }

  @Test
  void planesThroughVerticesAndFacesNeitherBreakNorBranch() {
    TriangleMesh box = Bodies.box(new Vec3(0, 0, 0), new Vec3(4, 3, 2), 1);
    // through rows of vertices of the walls
    for (double height : new double[] {0.3, 2.0 / 3, 4.0 / 3, 2}) {
      List<SectionLine> lines = cut(box, new Plane(Vec3.Z, height));
      assertThat(lines).hasSize(1);
      assertThat(lines.getFirst().closed()).isTrue();
      assertThat(lines.getFirst().lengthMm()).isCloseTo(14, within(1e-9));
      assertThat(area(lines.getFirst(), Vec3.Z)).isCloseTo(12, within(1e-9));
    }
    // the bottom face counts as above its plane, and nothing goes on below
    assertThat(cut(box, new Plane(Vec3.Z, 0))).isEmpty();
    // through edges of the box and diagonals of its faces
    List<SectionLine> slanted = cut(box, Plane.through(Vec3.ZERO, new Vec3(3, -4, 0)));
    assertThat(slanted).hasSize(1);
    assertThat(slanted.getFirst().lengthMm()).isCloseTo(14, within(1e-9));
  }

  @Test
  void aPointThatJustReachesThePlaneMakesNoLine() {
    TriangleMesh cone = Bodies.cone(3, 0, 5, 1);
    assertThat(cut(cone, new Plane(Vec3.Z, 5))).isEmpty();
    assertThat(cut(cone, new Plane(Vec3.Z, 4.99))).hasSize(1);
  }

  @Test
  void openShellsAreCutInOpenLines() {
    TriangleMesh half = Reshape.above(Bodies.sphere(10, 0.5), 0);
    List<SectionLine> lines = cut(half, new Plane(Vec3.X, 1));
    assertThat(lines).hasSize(1);
    assertThat(lines.getFirst().closed()).isFalse();
    assertThat(lines.getFirst().lengthMm()).isCloseTo(Math.PI * Math.sqrt(99), within(0.6));
    // seen against +x the line goes counter-clockwise round: over the top towards −y
    assertThat(lines.getFirst().point(0).y())
        .isGreaterThan(lines.getFirst().point(lines.getFirst().pointCount() - 1).y());
  }

  @Test
  void everyCutTriangleIsInOneLine() {
    Random random = new Random(23);
    TriangleMesh mesh = Reshape.roughened(Bodies.torus(5, 2, 0.8), 0.2, 2);
    for (int i = 0; i < 100; i++) {
      Vec3 normal =
          new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      // every second plane goes through a vertex
      Plane plane =
          i % 2 == 0
              ? new Plane(normal, random.nextGaussian() * 3)
              : Plane.through(mesh.vertex(random.nextInt(mesh.vertexCount())), normal);
      int cut = 0;
      for (int t = 0; t < mesh.triangleCount(); t++) {
        int above = 0;
        for (int k = 0; k < 3; k++) {
          above += plane.distance(mesh.vertex(mesh.corner(t, k))) > 0 ? 1 : 0;
        }
        cut += above > 0 && above < 3 ? 1 : 0;
      }
      List<SectionLine> lines = cut(mesh, plane);
      assertThat(lines).as("plane %d, seed 23", i).allMatch(SectionLine::closed);
      int segments = lines.stream().mapToInt(SectionLine::segmentCount).sum();
      // triangles that only touch at the vertex are counted or not
      assertThat(segments).isBetween(cut - 9, cut + 9);
    }
  }

  @Test
  void tangledMeshesAreCutWithoutFailing() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      double[] xyz = new double[30];
      for (int i = 0; i < xyz.length; i++) {
        xyz[i] = random.nextInt(3);
      }
      int[] corners = random.ints(60, 0, 10).toArray();
      MeshTopology topology = MeshTopology.of(TriangleMesh.of(xyz, corners));
      for (SectionLine line : Section.of(topology, new Plane(Vec3.Z, 1))) {
        assertThat(line.segmentCount()).as("seed %d", seed).isPositive();
      }
    }
  }

  @Test
  void theTreeMustBeOfTheSameMesh() {
    MeshTopology topology = MeshTopology.of(Bodies.sphere(3, 1));
    TriangleTree tree = TriangleTree.of(Bodies.sphere(3, 2));
    assertThatThrownBy(() -> Section.of(topology, tree, new Plane(Vec3.Z, 0)))
        .hasMessageContaining("another mesh");
  }
}
