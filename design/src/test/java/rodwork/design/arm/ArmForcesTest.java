package rodwork.design.arm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Range;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;

class ArmForcesTest {
  private static final ArmRules RULES =
      ArmRules.from(
          (id, unit) -> new Threshold(id, value(id), unit, "a test", Standing.OWN_CHOICE));

  private static double value(String id) {
    return switch (id) {
      case "arm-friction-least" -> 0.1;
      case "arm-friction-most" -> 0.3;
      case "clasp-pull-warn-below" -> 2;
      case "clasp-pull-warn-above" -> 10;
      case "arm-stress-share" -> 1;
      default -> 5;
    };
  }

  private static final Section ROOT = new Section.HalfRound(2, 1);
  private static final Section TIP = new Section.HalfRound(1, 0.5);

  private static ArmMaterial cobalt(Range gpa) {
    return material("cast Co-Cr", gpa, new Range(500, 500));
  }

  private static ArmMaterial material(String name, Range gpa, Range proof) {
    return new ArmMaterial(
        name,
        name,
        ArmMaterial.Making.CAST,
        gpa,
        proof,
        0.3,
        "a test",
        Standing.OWN_CHOICE,
        List.of());
  }

  /**
   * A straight arm beside a sphere, its tip in an undercut; it bends along x as a cantilever does.
   */
  private static ArmForces forces(double length, double undercut, ArmMaterial material) {
    double radius = 4.5;
    double depth = Math.sqrt(radius * radius - Math.pow(radius - undercut, 2));
    Vec3 tip = new Vec3(radius - undercut, 0, -depth);
    double drop = ROOT.centroidMm() - TIP.centroidMm();
    Arm arm =
        new Arm(
            List.of(
                new Arm.Station(tip.plus(new Vec3(-drop, -length, 0)), Vec3.X),
                new Arm.Station(tip, Vec3.X)),
            ROOT,
            TIP);
    return ArmForces.of(arm, material, new Crowns.Sphere(radius), Vec3.Z, RULES);
  }

  @Test
  void forceAndStressAreInProportionToTheModulus() {
    ArmForces soft = forces(12, 0.25, cobalt(Range.of(110)));
    ArmForces stiff = forces(12, 0.25, cobalt(Range.of(220)));
    ArmForces both = forces(12, 0.25, cobalt(new Range(110, 220)));
    Range a = soft.pullN().orElseThrow();
    Range b = stiff.pullN().orElseThrow();
    assertThat(b.to()).isCloseTo(2 * a.to(), within(1e-3));
    assertThat(both.pullN().orElseThrow().from()).isCloseTo(a.from(), within(1e-3));
    assertThat(both.pullN().orElseThrow().to()).isCloseTo(b.to(), within(1e-3));
    assertThat(stiff.stressMpa().to()).isCloseTo(2 * soft.stressMpa().to(), within(0.1));
  }

  /**
   * A straight beam: 391 MPa at 0.25 mm, 12 mm; friction bends the arm downwards too, and twists
   * it.
   */
  @Test
  void theStressIsThatOfTheTableAndAlittleForFriction() {
    ArmForces forces = forces(12, 0.25, cobalt(Range.of(220)));
    assertThat(forces.stressMpa().from()).isBetween(385.0, 430.0);
    assertThat(forces.stressShare().to()).isBetween(0.77, 0.95);
    assertThat(ArmAdvice.of(forces, List.of(), new Crowns.Sphere(4.5), Vec3.Z, RULES))
        .isEqualTo(ArmAdvice.NONE);
  }

  @Test
  void anOverstressedArmIsToldWhatWouldHold() {
    ArmForces forces = forces(9, 0.25, cobalt(Range.of(220)));
    assertThat(forces.stressShare().to()).isGreaterThan(1.3);
    ArmAdvice told =
        ArmAdvice.of(
            forces,
            List.of(
                new ArmAdvice.Choice(
                    material("Ti-6Al-4V", Range.of(112), Range.of(850)), ROOT, TIP),
                new ArmAdvice.Choice(material("weak", Range.of(220), Range.of(300)), ROOT, TIP)),
            new Crowns.Sphere(4.5),
            Vec3.Z,
            RULES);
    assertThat(told.leastShare().orElseThrow().to()).isLessThan(1);
    List<String> advice = told.sentences();
    assertThat(advice).hasSize(3);
    assertThat(advice.get(0)).contains("9.0 mm of cast Co-Cr", "of 500 MPa");
    assertThat(advice.get(1)).startsWith("Ti-6Al-4V would hold");
    assertThat(advice.get(2)).matches(".*about 1[1-3] mm long\\.");
    // What is advised does hold.
    assertThat(forces(13, 0.25, cobalt(Range.of(220))).stressShare().to()).isLessThan(1);
  }

  @Test
  void theFindingsKeepTheirRanges() {
    ArmForces forces = forces(9, 0.25, cobalt(new Range(200, 228)));
    List<Finding> findings = forces.findings(RULES, Place.of("tooth 35"));
    assertThat(findings).hasSize(3);
    assertThat(findings.get(2).rule()).isEqualTo("arm-stress-share");
    assertThat(findings.get(2).verdict()).isEqualTo(Verdict.NOT_MET);
    assertThat(findings.get(0).sentence(Integer::toString)).contains("±", " N");
  }

  @Test
  void aTipThatLocksItselfIsSaidAndHasNoNumber() {
    Vec3 tip = new Vec3(4, 0, 0);
    Arm arm =
        new Arm(
            List.of(
                new Arm.Station(tip.plus(new Vec3(0, -12, 0)), Vec3.X),
                new Arm.Station(tip, Vec3.X)),
            // Tall and thin: hardly gives way along the path.
            new Section.HalfRound(20, 0.5),
            new Section.HalfRound(20, 0.5));
    ArmForces steep =
        ArmForces.of(arm, cobalt(Range.of(220)), new Crowns.Cone(4, 80), Vec3.Z, RULES);
    assertThat(steep.pullN()).isPresent();
    assertThat(steep.locksFrom()).hasValue(0.3);
    ArmForces steeper =
        ArmForces.of(arm, cobalt(Range.of(220)), new Crowns.Cone(4, 86), Vec3.Z, RULES);
    assertThat(steeper.pullN()).isEmpty();
    assertThat(steeper.locksFrom()).hasValue(0.1);
  }
}
