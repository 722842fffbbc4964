package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Range;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/**
 * What one retentive arm does on its way out: ranges over friction and modulus, never one confident
 * number, since published forces of like clasps spread twentyfold.
 *
 * @param arm the arm
 * @param material what it is made of
 * @param pullN the greatest pull on the way [N]; empty where the tip locks itself even at the least
 *     friction
 * @param locksFrom least friction of the two tried at which the tip locks itself; empty if it does
 *     not
 * @param peakTravelMm travel at which the pull is greatest, at the least friction [mm]
 * @param toLineMm travel until the tip is at the survey line [mm]: as long as the reciprocal arm
 *     must stay in touch
 * @param freeAtMm travel until the tip is free [mm]
 * @param stressMpa the greatest stress on the way [MPa]
 * @param stressShare the same as a share of the proof stress
 * @param stressFromRootMm where on the arm it arises [mm from the origin]
 * @param leastFriction the way out at the least friction and the greatest modulus, for plotting
 * @param mostFriction the way out at the greatest friction and the greatest modulus
 */
public record ArmForces(
    Arm arm,
    ArmMaterial material,
    Optional<Range> pullN,
    OptionalDouble locksFrom,
    double peakTravelMm,
    OptionalDouble toLineMm,
    OptionalDouble freeAtMm,
    Range stressMpa,
    Range stressShare,
    double stressFromRootMm,
    Withdrawal leastFriction,
    Withdrawal mostFriction) {

  /**
   * Follows an arm out of its undercut.
   *
   * @param path withdrawal axis, unit vector from tissue to the occlusal side
   */
  public static ArmForces of(
      Arm arm, ArmMaterial material, ToothSurface tooth, Vec3 path, ArmRules rules) {
    ArmBeam beam = ArmBeam.of(arm, material.poisson());
    double stiffMpa = 1000 * material.modulusGpa().to();
    // The shape of the way does not depend on the modulus; all forces are in proportion to it.
    double soft = material.modulusGpa().from() / material.modulusGpa().to();
    Compliance stiff = beam.compliance(stiffMpa);
    Vec3 tip = arm.end().point();
    double least = rules.leastFriction().value();
    double most = rules.mostFriction().value();
    Withdrawal smooth = Withdrawal.of(tooth, tip, path, stiff, least);
    Withdrawal rough = Withdrawal.of(tooth, tip, path, stiff, most);
    ArmBeam.Peak low = peakStress(beam, smooth);
    ArmBeam.Peak high = peakStress(beam, rough);
    Range stress =
        new Range(soft * Math.min(low.mpa(), high.mpa()), Math.max(low.mpa(), high.mpa()));
    boolean locksAtLeast = smooth.lockedAtMm().isPresent();
    boolean locksAtMost = rough.lockedAtMm().isPresent();
    double weakest = soft * smooth.peak().pullN();
    return new ArmForces(
        arm,
        material,
        locksAtLeast
            ? Optional.empty()
            : Optional.of(new Range(weakest, Math.max(weakest, rough.peak().pullN()))),
        locksAtLeast
            ? OptionalDouble.of(least)
            : locksAtMost ? OptionalDouble.of(most) : OptionalDouble.empty(),
        smooth.peak().travelMm(),
        smooth.toLineMm(),
        smooth.freeAtMm(),
        stress,
        new Range(
            stress.from() / material.proofMpa().to(), stress.to() / material.proofMpa().from()),
        high.mpa() > low.mpa() ? high.fromRootMm() : low.fromRootMm(),
        smooth,
        rough);
  }

  private static ArmBeam.Peak peakStress(ArmBeam beam, Withdrawal way) {
    Withdrawal.Step hardest = way.steps().getFirst();
    ArmBeam.Peak peak = new ArmBeam.Peak(0, 0);
    for (Withdrawal.Step step : way.steps()) {
      // The stress is nearly in proportion to the force: only new greatest forces are worked out.
      if (step.force().length() > hardest.force().length()) {
        hardest = step;
      }
    }
    if (hardest.force().length() > 0) {
      peak = beam.peakStress(hardest.force());
    }
    return peak;
  }

  /** What the rules say of it: pull of the clasp, stress. */
  public List<Finding> findings(ArmRules rules, Place place) {
    List<Finding> findings = new ArrayList<>();
    pullN.ifPresent(
        pull -> {
          Reading reading = spread(pull, "N");
          Threshold below = rules.warnBelow();
          Threshold above = rules.warnAbove();
          findings.add(Finding.least(below, "pull of the clasp", place, reading));
          findings.add(Finding.most(above, "pull of the clasp", place, reading));
        });
    Threshold share = rules.stressShare();
    findings.add(
        Finding.most(
            share,
            "peak stress as a share of the proof stress of " + material.name(),
            place,
            spread(stressShare, "1")));
    return findings;
  }

  private static Reading spread(Range range, String unit) {
    return new Reading.Measured(
        (range.from() + range.to()) / 2, (range.to() - range.from()) / 2, unit);
  }
}
