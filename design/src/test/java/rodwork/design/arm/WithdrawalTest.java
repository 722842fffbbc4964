package rodwork.design.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.geometry.testing.Bodies;

/** Truth: the wedge with friction, F = P·tan(α + φ) = R·sin(α + φ)/cos φ, φ = arctan μ. */
class WithdrawalTest {
  /** Bends along x only, 10 N/mm. */
  private static final Compliance LATERAL = new Compliance(0.1, 0, 0, 0, 0, 0);

  /** Bends alike in all directions, 10 N/mm. */
  private static final Compliance ALIKE = new Compliance(0.1, 0.1, 0.1, 0, 0, 0);

  @ParameterizedTest
  @CsvSource({"5, 0", "5, 0.1", "15, 0.2", "30, 0.3", "10, 0.3"})
  void aConeGivesBothClosedForms(double angleDeg, double friction) {
    double alpha = Math.toRadians(angleDeg);
    double phi = Math.atan(friction);
    var cone = new Crowns.Cone(4, angleDeg);
    Vec3 tip = new Vec3(4, 0, 0);
    Withdrawal lateral = Withdrawal.of(cone, tip, Vec3.Z, LATERAL, friction);
    Withdrawal alike = Withdrawal.of(cone, tip, Vec3.Z, ALIKE, friction);
    assertThat(lateral.lockedAtMm()).isEmpty();
    for (int i = 1; i < 50; i++) {
      Withdrawal.Step a = lateral.steps().get(i);
      double spring = 10 * a.travelMm() * Math.tan(alpha);
      assertThat(a.force().x()).isCloseTo(spring, within(1e-4 * spring));
      assertThat(a.pullN()).isCloseTo(spring * Math.tan(alpha + phi), within(1e-4 * spring));
      Withdrawal.Step b = alike.steps().get(i);
      double normal = 10 * b.travelMm() * Math.sin(alpha);
      assertThat(b.normalN()).isCloseTo(normal, within(1e-4 * normal));
      assertThat(b.pullN())
          .isCloseTo(normal * Math.sin(alpha + phi) / Math.cos(phi), within(1e-4 * normal));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.25, 0", "0.25, 0.2", "0.50, 0.1", "0.75, 0.3"})
  void aSphereGivesTheWedgeAtEachPlace(double undercut, double friction) {
    double radius = 4.5;
    double phi = Math.atan(friction);
    double depth = Math.sqrt(radius * radius - Math.pow(radius - undercut, 2));
    Vec3 tip = new Vec3(radius - undercut, 0, -depth);
    Withdrawal way = Withdrawal.of(new Crowns.Sphere(radius), tip, Vec3.Z, LATERAL, friction);
    for (Withdrawal.Step step : way.steps().subList(1, way.steps().size() - 1)) {
      double z = step.travelMm() - depth;
      double bent = Math.sqrt(radius * radius - z * z) - tip.x();
      double alpha = Math.asin(-z / radius);
      assertThat(step.deflectionMm()).isCloseTo(bent, within(1e-5));
      assertThat(step.pullN()).isCloseTo(10 * bent * Math.tan(alpha + phi), within(1e-3));
      assertThat(step.convergenceDeg()).isCloseTo(Math.toDegrees(alpha), within(1e-3));
    }
    assertThat(way.toLineMm().orElseThrow()).isCloseTo(depth, within(0.001));
    assertThat(way.freeAtMm().orElseThrow()).isCloseTo(2 * depth, within(0.021));
    assertThat(way.peak().deflectionMm()).isLessThanOrEqualTo(undercut + 1e-6);
    assertThat(way.peak().travelMm()).isBetween(0.3 * depth, depth);
  }

  /** tan(α + φ) grows without bound at 90°: with μ = 1 at a convergence of 45°. */
  @Test
  void aSteepPlaceLocksItself() {
    Vec3 tip = new Vec3(4, 0, 0);
    assertThat(Withdrawal.of(new Crowns.Cone(4, 44), tip, Vec3.Z, LATERAL, 1).lockedAtMm())
        .isEmpty();
    assertThat(Withdrawal.of(new Crowns.Cone(4, 46), tip, Vec3.Z, LATERAL, 1).lockedAtMm())
        .isPresent();
    // A tip that also gives way downwards slips where the planar one is stuck.
    assertThat(Withdrawal.of(new Crowns.Cone(4, 46), tip, Vec3.Z, ALIKE, 1).lockedAtMm()).isEmpty();
  }

  @Test
  void withoutUndercutNothingHolds() {
    Withdrawal way = Withdrawal.of(new Crowns.Cone(4, -5), new Vec3(4, 0, 0), Vec3.Z, LATERAL, 0.3);
    assertThat(way.peak().pullN()).isZero();
    assertThat(way.freeAtMm().orElseThrow()).isLessThan(0.03);
  }

  @Test
  void aScannedSphereIsFollowedLikeTheClosedForm() {
    double radius = 4.5;
    double undercut = 0.5;
    double depth = Math.sqrt(radius * radius - Math.pow(radius - undercut, 2));
    TriangleMesh mesh = Bodies.sphere(radius, 0.15);
    MeshSurface scanned =
        new MeshSurface(
            TriangleTree.of(mesh),
            VertexNormals.of(MeshTopology.of(mesh), VertexNormals.DEFAULT_SCALE_MM));
    Vec3 tip = new Vec3(radius - undercut, 0, -depth);
    Withdrawal real = Withdrawal.of(scanned, tip, Vec3.Z, ALIKE, 0.2);
    Withdrawal closed = Withdrawal.of(new Crowns.Sphere(radius), tip, Vec3.Z, ALIKE, 0.2);
    assertThat(real.peak().pullN())
        .isCloseTo(closed.peak().pullN(), within(0.05 * closed.peak().pullN()));
    assertThat(real.toLineMm().orElseThrow())
        .isCloseTo(closed.toLineMm().orElseThrow(), within(0.02));
  }
}
