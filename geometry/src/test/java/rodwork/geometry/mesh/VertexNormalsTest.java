package rodwork.geometry.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/** Truth: the closed-form normals of sphere, ellipsoid and torus. */
class VertexNormalsTest {
  /** A smooth body with its normal, given on and near the surface. */
  private record Form(String name, TriangleMesh mesh, UnaryOperator<Vec3> normal) {
    /** The same surface, its vertices shifted along it at random: triangles of uneven shape. */
    Form uneven(double shiftMm, UnaryOperator<Vec3> project) {
      TriangleMesh shifted = Reshape.each(Reshape.roughened(mesh, shiftMm, 5), project);
      return new Form(name + " uneven", shifted, normal);
    }

    Form rough(double sigmaMm, long seed) {
      return new Form(name + " rough", Reshape.roughened(mesh, sigmaMm, seed), normal);
    }
  }

  private static Form sphere(double edge) {
    return new Form("sphere 4", Bodies.sphere(4, edge), Vec3::unit);
  }

  private static Form ellipsoid(double edge) {
    return ellipsoid(5, 4, 3, edge);
  }

  private static Form ellipsoid(double a, double b, double c, double edge) {
    return new Form(
        "ellipsoid " + a + " " + b + " " + c,
        Bodies.ellipsoid(a, b, c, edge),
        p -> new Vec3(p.x() / (a * a), p.y() / (b * b), p.z() / (c * c)).unit());
  }

  private static Form torus(double edge) {
    return new Form(
        "torus 6, 3.5",
        Bodies.torus(6, 3.5, edge),
        p -> p.minus(new Vec3(p.x(), p.y(), 0).unit().times(6)).unit());
  }

  private static final List<Vec3> AXES =
      List.of(Vec3.Z, new Vec3(0.1, 0.15, 1).unit(), new Vec3(-0.3, 0.2, 1).unit());

  /**
   * How far the zero of n·p on the mesh's edges lies from the true one along the surface [mm],
   * sorted: first-order distance |n·p| over the slope of n·p on the surface.
   */
  private static double[] errors(Form form, double scale) {
    MeshTopology topology = MeshTopology.of(form.mesh);
    VertexNormals normals = VertexNormals.of(topology, scale);
    double[] errors = new double[3 * topology.edgeCount()];
    int n = 0;
    for (Vec3 axis : AXES) {
      for (int e = 0; e < topology.edgeCount(); e++) {
        int a = topology.edgeVertex(e, 0);
        int b = topology.edgeVertex(e, 1);
        double fa = normals.normal(a).dot(axis);
        double fb = normals.normal(b).dot(axis);
        if (fa > 0 != fb > 0) {
          double s = fa / (fa - fb);
          errors[n++] =
              distance(
                  form, form.mesh.vertex(a).times(1 - s).plus(form.mesh.vertex(b).times(s)), axis);
        }
      }
    }
    double[] sorted = Arrays.copyOf(errors, n);
    Arrays.sort(sorted);
    assertThat(n).as("crossings of %s", form.name).isGreaterThan(150);
    return sorted;
  }

  private static double distance(Form form, Vec3 x, Vec3 axis) {
    double h = 1e-5;
    Vec3 gradient =
        new Vec3(
            slope(form, x, axis, new Vec3(h, 0, 0)),
            slope(form, x, axis, new Vec3(0, h, 0)),
            slope(form, x, axis, new Vec3(0, 0, h)));
    Vec3 normal = form.normal.apply(x);
    return Math.abs(normal.dot(axis)) / gradient.across(normal).length();
  }

  private static double slope(Form form, Vec3 x, Vec3 axis, Vec3 step) {
    double after = form.normal.apply(x.plus(step)).dot(axis);
    double before = form.normal.apply(x.minus(step)).dot(axis);
    return (after - before) / (2 * step.length());
  }

  private static double share(double[] sorted, double share) {
    return sorted[(int) Math.min(sorted.length - 1, share * sorted.length)];
  }

  /**
   * Measured at 0.25 mm, greatest: sphere 0.001, ellipsoid 4.4 4 3.6 0.003, its uneven sister
   * 0.009, torus 0.003 mm; plain angle-weighted normals: uneven 0.02 mm.
   */
  @Test
  void crownLikeFormsMoveTheZeroByLessThanAHundredth() {
    UnaryOperator<Vec3> onEllipsoid =
        p -> {
          double f = p.x() * p.x() / 19.36 + p.y() * p.y() / 16 + p.z() * p.z() / 12.96;
          return p.times(1 / Math.sqrt(f));
        };
    for (Form form :
        List.of(
            sphere(0.2),
            ellipsoid(4.4, 4, 3.6, 0.2),
            ellipsoid(4.4, 4, 3.6, 0.2).uneven(0.015, onEllipsoid),
            torus(0.2))) {
      double[] errors = errors(form, VertexNormals.DEFAULT_SCALE_MM);
      print(form, errors);
      assertThat(share(errors, 1)).as("greatest error on %s", form.name).isLessThan(0.01);
    }
  }

  /** Radii of curvature from 1.8 to 8.3 mm along one body; measured 0.012 mm. */
  @Test
  void strongChangeOfCurvatureStaysBelowTwoHundredths() {
    double[] errors = errors(ellipsoid(5, 4, 3, 0.2), VertexNormals.DEFAULT_SCALE_MM);
    assertThat(share(errors, 1)).isLessThan(0.02);
  }

  /** Measured 95 % at 0.25 mm: 0.024 to 0.050 mm; with plain normals 0.2 mm and more. */
  @Test
  void tenMicrometresOfNoiseMoveTheZeroByLessThanATenth() {
    for (long seed = 11; seed < 14; seed++) {
      for (Form form : List.of(sphere(0.2), ellipsoid(4.4, 4, 3.6, 0.2), torus(0.2))) {
        Form rough = form.rough(0.01, seed);
        double[] errors = errors(rough, VertexNormals.DEFAULT_SCALE_MM);
        print(rough, errors);
        assertThat(share(errors, 0.95)).as("%s, seed %d", rough.name, seed).isLessThan(0.1);
        assertThat(share(errors(rough, 0), 0.95))
            .as("the noise is real: %s, seed %d", rough.name, seed)
            .isGreaterThan(0.15);
      }
    }
  }

  @Test
  void theAverageReachesAsFarAsStated() {
    // On a flat plate a ridge of turned normals spreads like a Gaussian of the stated deviation:
    // here the plate is a gentle wave, whose slope shrinks by exp(−(k σ)² / 2).
    double k = 2;
    double scale = 0.25;
    TriangleMesh plate =
        Reshape.each(
            Bodies.box(new Vec3(-4, -4, -1), new Vec3(4, 4, 0), 0.12),
            p -> p.z() < 0 ? p : new Vec3(p.x(), p.y(), 0.001 * Math.cos(k * p.x())));
    VertexNormals plain = VertexNormals.of(MeshTopology.of(plate), 0);
    VertexNormals wide = VertexNormals.of(MeshTopology.of(plate), scale);
    double before = 0;
    double after = 0;
    for (int v = 0; v < plate.vertexCount(); v++) {
      Vec3 p = plate.vertex(v);
      if (p.z() > -0.5 && Math.abs(p.x()) < 2 && Math.abs(p.y()) < 2) {
        before += plain.x(v) * plain.x(v);
        after += wide.x(v) * wide.x(v);
      }
    }
    assertThat(Math.sqrt(after / before))
        .isCloseTo(Math.exp(-k * k * scale * scale / 2), within(0.005));
  }

  @Test
  void edgesLongerThanTheScaleAreLeftAlone() {
    TriangleMesh coarse = Bodies.ellipsoid(5, 4, 3, 1);
    VertexNormals plain = VertexNormals.of(MeshTopology.of(coarse), 0);
    VertexNormals scaled = VertexNormals.of(MeshTopology.of(coarse), 0.25);
    for (int v = 0; v < coarse.vertexCount(); v++) {
      assertThat(scaled.normal(v)).isEqualTo(plain.normal(v));
    }
  }

  @Test
  void normalsTurnWithTheMesh() {
    TriangleMesh mesh = ellipsoid(0.3).mesh;
    Vec3 axis = new Vec3(1, -2, 3);
    VertexNormals here = VertexNormals.of(MeshTopology.of(mesh), 0.3);
    VertexNormals there = VertexNormals.of(MeshTopology.of(Reshape.turned(mesh, axis, 50)), 0.3);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 turned = Reshape.turned(here.normal(v), axis, 50);
      assertThat(there.normal(v).distance(turned)).isLessThan(1e-9);
    }
  }

  @Test
  void verticesWithoutAreaHaveNoNormal() {
    TriangleMesh mesh =
        TriangleMesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 9, 9, 9}, new int[] {0, 1, 2, 3, 3, 3});
    VertexNormals normals = VertexNormals.of(MeshTopology.of(mesh), 0.25);
    assertThat(normals.normal(3)).isEqualTo(Vec3.ZERO);
    assertThat(normals.normal(0)).isEqualTo(Vec3.Z);
  }

  @Test
  void scaleMustBeALength() {
    MeshTopology topology = MeshTopology.of(sphere(2).mesh);
    assertThatThrownBy(() -> VertexNormals.of(topology, -1)).hasMessageContaining("-1");
    assertThatThrownBy(() -> VertexNormals.of(topology, Double.NaN)).hasMessageContaining("NaN");
  }

  @Test
  void arcCosineIsCloseEnough() {
    for (int i = -1000; i <= 1000; i++) {
      double x = i / 1000.0;
      assertThat(VertexNormals.arcCos(x)).isCloseTo(Math.acos(x), within(3e-8));
    }
  }

  private static void print(Form form, double[] errors) {
    System.out.printf(
        "zero of n·p, %s: middle %.4f, 95 %% %.4f, greatest %.4f mm%n",
        form.name, share(errors, 0.5), share(errors, 0.95), share(errors, 1));
  }
}
