package rodwork.design.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.geometry.Vec3;

class ArmBeamTest {
  private static final Percentage HALF_PERCENT = Percentage.withPercentage(0.5);

  /** Straight cantilevers: F = 3EIδ/L³, σ = 3Ecδ/L² (any text on strength of materials). */
  @ParameterizedTest
  @CsvSource({
    // modulus GPa, diameter, length; stiffness N/mm, then force and stress at a deflection of 0.25
    // mm
    "220, 1.0, 15, 9.60, 2.40, 367",
    "115, 1.02, 12, 10.61, 2.65, 305",
    "185, 0.81, 12, 6.79, 1.70, 390",
    "115, 1.02, 8, 35.8, 8.95, 687",
  })
  void straightRoundWires(
      double gpa, double diameter, double length, double stiffness, double newton, double mpa) {
    check(new Section.Round(diameter), 1, gpa, length, stiffness, newton, mpa);
  }

  /**
   * Self-similar linear taper to a half: k = 3·E·I₀·β/L³, greatest stress 1.185·F·L·c₀/I₀ at the
   * middle of the arm (integrated numerically to the same figures before they were written down
   * here).
   */
  @ParameterizedTest
  @CsvSource({
    "220, 15, 10.73, 2.68, 250",
    "220, 12, 20.96, 5.24, 391",
    "220, 10, 36.22, 9.06, 563",
    "105, 12, 10.00, 2.50, 187",
    "112, 12, 10.67, 2.67, 199",
    "95, 12, 9.05, 2.26, 169",
  })
  void taperedHalfRoundArms(
      double gpa, double length, double stiffness, double newton, double mpa) {
    check(new Section.HalfRound(2, 1), 0.5, gpa, length, stiffness, newton, mpa);
  }

  private static void check(
      Section root,
      double taper,
      double gpa,
      double length,
      double stiffness,
      double newton,
      double mpa) {
    Section tip =
        switch (root) {
          case Section.Round round -> new Section.Round(taper * round.diameterMm());
          case Section.HalfRound half ->
              new Section.HalfRound(taper * half.widthMm(), taper * half.thicknessMm());
        };
    ArmBeam beam = ArmBeam.of(Arms.straight(length, root, tip), 0.3);
    double exact = 3 * gpa * 1000 * root.awayMm4() * taper / Math.pow(length, 3);
    double k = 1 / beam.compliance(gpa * 1000).along(Vec3.Z);
    assertThat(k).isCloseTo(exact, Percentage.withPercentage(0.05));
    // The table's own figures are rounded to three or four digits.
    assertThat(k).isCloseTo(stiffness, HALF_PERCENT);
    assertThat(k * 0.25).isCloseTo(newton, HALF_PERCENT);
    ArmBeam.Peak peak = beam.peakStress(Vec3.Z.times(k * 0.25));
    assertThat(peak.mpa()).isCloseTo(mpa, HALF_PERCENT);
    assertThat(peak.fromRootMm()).isCloseTo(taper < 2.0 / 3 ? length / 2 : 0, within(length / 50));
  }

  /**
   * Quarter circle held at one end, by Castigliano's theorem (S. Timoshenko, Strength of Materials,
   * Part I, 2nd ed. 1940, "Deflection of curved bars"; from memory, integrals worked out anew). At
   * angle θ from the loaded end a load P along the end's radius gives M = PR·sin θ, so δ = πPR³/4EI
   * along it and PR³/2EI across it in the plane; a load out of the plane gives M = PR·sin θ and T =
   * PR·(1 − cos θ), so δ = PR³·(π/4EI + (3π/4 − 2)/GJ). The wire is thin, so that neither
   * stretching nor the half thickness between the place of the load and the centroid counts.
   */
  @Test
  void aQuarterCircleIsCastiglianos() {
    double radius = 5;
    double e = 220_000;
    double g = e / 2.6;
    Section section = new Section.Round(0.01);
    Compliance c = ArmBeam.of(Arms.quarterCircle(radius, section, 400), 0.3).compliance(e);
    double i = section.awayMm4();
    double r3 = Math.pow(radius, 3);
    assertThat(c.along(Vec3.Y)).isCloseTo(Math.PI * r3 / (4 * e * i), HALF_PERCENT);
    assertThat(Math.abs(c.xy())).isCloseTo(r3 / (2 * e * i), HALF_PERCENT);
    assertThat(c.along(Vec3.Z))
        .isCloseTo(
            r3 * (Math.PI / (4 * e * i) + (3 * Math.PI / 4 - 2) / (g * section.torsionMm4())),
            HALF_PERCENT);
  }

  /** F/δ of 9.3 to 10.1 N/mm was measured on cast Co-Cr arms, half of it on titanium (T1). */
  @Test
  void slopeAndRatioOfMeasuredClaspsAreReproduced() {
    ArmBeam beam = ArmBeam.of(Arms.straight(15, new Section.Round(1), new Section.Round(1)), 0.3);
    double cobalt = 1 / beam.compliance(220_000).along(Vec3.Z);
    double titanium = 1 / beam.compliance(105_000).along(Vec3.Z);
    assertThat(cobalt).isBetween(9.3, 10.1);
    assertThat(titanium / cobalt).isBetween(0.47, 0.53);
  }

  @Test
  void theDirectionOfTheCurveAndTheFrameDoNotMatter() {
    Section root = new Section.HalfRound(2, 1);
    Section tip = new Section.HalfRound(1, 0.5);
    Arm arm = Arms.round(60, t -> spiral(t), root, tip);
    Arm turned =
        new Arm(
            arm.line().stream()
                .map(s -> new Arm.Station(turn(s.point()), turn(s.outward())))
                .toList(),
            root,
            tip);
    Compliance c = ArmBeam.of(arm, 0.3).compliance(1);
    Compliance d = ArmBeam.of(turned, 0.3).compliance(1);
    Vec3 f = new Vec3(0.3, -0.5, 0.8);
    assertThat(turn(c.times(f)).minus(d.times(turn(f))).length())
        .isLessThan(1e-9 * c.times(f).length());
  }

  @Test
  void morePointsOnTheSameCurveChangeLittle() {
    Section root = new Section.HalfRound(2, 1);
    Section tip = new Section.HalfRound(1, 0.5);
    Compliance few = ArmBeam.of(Arms.round(40, ArmBeamTest::spiral, root, tip), 0.3).compliance(1);
    Compliance many =
        ArmBeam.of(Arms.round(800, ArmBeamTest::spiral, root, tip), 0.3).compliance(1);
    for (Vec3 d : new Vec3[] {Vec3.X, Vec3.Y, Vec3.Z}) {
      assertThat(few.along(d)).isCloseTo(many.along(d), HALF_PERCENT);
    }
  }

  private static Vec3 spiral(double t) {
    double angle = 1.9 * t;
    return new Vec3(4.5 * Math.cos(angle), 4.5 * Math.sin(angle), -2.5 * t * t);
  }

  /** Cyclic, so a rotation. */
  private static Vec3 turn(Vec3 v) {
    return new Vec3(v.z(), v.x(), v.y());
  }
}
