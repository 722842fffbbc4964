package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Reshape;

/** What must hold for every mesh and axis; truth: the definition of the depth. */
class OverhangPropertyTest {
  private static final String SEED = "4711";

  private static TriangleMesh lump(int i) {
    return OverhangWitnessTest.lump(100 + i, 0.9);
  }

  /**
   * A depth is that of an overhang, to 5 µm in depth or 1 µm in height: where a valley lies within
   * a micrometre of the level, whether it is a way out is for rounding to decide.
   */
  private static void agrees(double depth, Overhang overhang, Vec3 point) {
    Vec3 lift = overhang.axis().times(0.001);
    assertThat(depth)
        .as("at %s", point)
        .isBetween(
            overhang.depthAt(point.plus(lift)) - 0.005,
            overhang.depthAt(point.minus(lift)) + 0.005);
  }

  private static Vec3 axis(double a, double b) {
    return new Vec3(a, b, 1).unit();
  }

  @Property(tries = 100, seed = SEED)
  void turnsAndMovesWithTheAxis(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = -1, max = 1) double b,
      @ForAll @DoubleRange(min = 0, max = 360) double degrees) {
    TriangleMesh mesh = lump(i);
    Vec3 about = new Vec3(b, 1, a).unit();
    Vec3 shift = new Vec3(30 * a, -20, 10 * b);
    TriangleMesh other = Reshape.each(mesh, p -> Reshape.turned(p, about, degrees).plus(shift));
    Overhang one = Overhangs.of(mesh, axis(a, b));
    Overhang two = Overhangs.of(other, Reshape.turned(axis(a, b), about, degrees));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      agrees(two.depth(v), one, mesh.vertex(v));
    }
  }

  @Property(tries = 100, seed = SEED)
  void mirrors(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = -1, max = 1) double b) {
    TriangleMesh mesh = lump(i);
    Vec3 p = axis(a, b);
    TriangleMesh other = Reshape.each(mesh, q -> new Vec3(-q.x(), q.y(), q.z()));
    Overhang one = Overhangs.of(mesh, p);
    Overhang two = Overhangs.of(other, new Vec3(-p.x(), p.y(), p.z()));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      agrees(two.depth(v), one, mesh.vertex(v));
    }
  }

  @Property(tries = 100, seed = SEED)
  void refiningWithoutMovingTheSurfaceChangesNothing(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = -1, max = 1) double b) {
    TriangleMesh mesh = lump(i);
    Overhang one = Overhangs.of(mesh, axis(a, b));
    Overhang two = Overhangs.of(Reshape.refined(mesh), axis(a, b));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      agrees(two.depth(v), one, mesh.vertex(v));
    }
  }

  @Property(tries = 100, seed = SEED)
  void neverGrowsWhenMaterialAboveIsTakenAway(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = -1, max = 1) double b) {
    TriangleMesh mesh = lump(i);
    Vec3 p = axis(a, b);
    Overhang whole = Overhangs.of(mesh, p);
    TriangleMesh less =
        Reshape.only(mesh, t -> mesh.pointOn(t, 1.0 / 3, 1.0 / 3).dot(p) < 2 || t % 3 == 0);
    Overhang part = Overhangs.of(less, p);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      assertThat(part.depthAt(mesh.vertex(v))).isLessThanOrEqualTo(whole.depth(v) + 0.005);
    }
  }

  @Property(tries = 100, seed = SEED)
  void isNeverMoreThanTheDepthInADirection(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = 0, max = 360) double degrees) {
    TriangleMesh mesh = lump(i);
    Overhang overhang = Overhangs.of(mesh, axis(a, -a));
    Vec3 d = Reshape.turned(overhang.axis().anyPerpendicular(), overhang.axis(), degrees);
    for (int v = 0; v < mesh.vertexCount(); v += 3) {
      double along = overhang.depthAlong(mesh.vertex(v), d);
      assertThat(overhang.depth(v)).isLessThanOrEqualTo(along + 0.005);
      if (along < 4 && along > 0) {
        Vec3 out = mesh.vertex(v).plus(d.times(along + 1e-4));
        assertThat(overhang.depthAt(out)).as("just out of the shadow").isLessThan(0.01);
      }
    }
  }

  @Property(tries = 100, seed = SEED)
  void movingSidewaysChangesItByNoMoreThanTheMove(
      @ForAll @IntRange(max = 20) int i,
      @ForAll @DoubleRange(min = -1, max = 1) double a,
      @ForAll @DoubleRange(min = 0.01, max = 0.5) double step) {
    TriangleMesh mesh = lump(i);
    Overhang overhang = Overhangs.of(mesh, axis(a, a));
    Vec3 d = overhang.axis().anyPerpendicular().times(step);
    // At the bottom of a pit the only free line may be a point of no width, which counts for the
    // vertex
    // in it and is found from nowhere else; a micrometre above the level it has room.
    Vec3 lift = overhang.axis().times(0.001);
    for (int v = 0; v < mesh.vertexCount(); v += 3) {
      Vec3 here = mesh.vertex(v);
      Vec3 there = here.plus(d);
      assertThat(overhang.depthAt(there.plus(lift)))
          .as("moved from %s", here)
          .isLessThanOrEqualTo(overhang.depthAt(here) + step + 0.005);
      assertThat(overhang.depthAt(here.plus(lift)))
          .as("moved back to %s", here)
          .isLessThanOrEqualTo(overhang.depthAt(there) + step + 0.005);
    }
  }

  @Property(tries = 4, seed = SEED)
  void pointsAndVerticesAgree(@ForAll @IntRange(max = 20) int i) {
    TriangleMesh mesh = lump(i);
    Overhang overhang = Overhangs.of(mesh, axis(0.1, 0.2));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      assertThat(overhang.read(mesh.vertex(v)).depthMm())
          .isCloseTo(overhang.depth(v), within(1e-5));
    }
  }
}
