package rodwork.design.course;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.design.arm.ArmAdvice;
import rodwork.design.arm.ArmForces;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.arm.ArmStock;
import rodwork.design.arm.ToothSurface;
import rodwork.design.clasp.Fact;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Range;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/**
 * What a clasp does on its tooth.
 *
 * @param course its arms
 * @param forces of the retentive arm on its way out; empty where its tip stands on no mark yet
 * @param opposingN friction of the opposing contact on a parallel surface while the tip presses
 *     [N]; empty where nothing opposes it or there are no forces
 * @param findings encirclement, pull, stress
 * @param advice what to do where the arm is overstressed
 */
public record ClaspAction(
    ClaspCourse course,
    Optional<ArmForces> forces,
    Optional<Range> opposingN,
    List<Finding> findings,
    ArmAdvice advice) {
  public ClaspAction {
    findings = List.copyOf(findings);
  }

  /** What the arms tell of themselves to the clauses of their family. */
  public Map<Fact, Reading> readings() {
    Map<Fact, Reading> readings = new EnumMap<>(Fact.class);
    if (forces.isPresent()) {
      readings.put(
          Fact.ARM_PULL,
          forces
              .get()
              .pullN()
              .<Reading>map(pull -> spread(pull, "N"))
              .orElseGet(() -> new Reading.NotKnown("the tip locks itself")));
      readings.put(Fact.ARM_STRESS, share(forces.get().stressShare()));
    }
    advice.leastShare().ifPresent(share -> readings.put(Fact.ARM_STRESS_OTHERWISE, share(share)));
    return readings;
  }

  /**
   * A stress goes with the inverse square of the arm's length, which is read no more exactly than
   * {@link ClaspCourse.LENGTH_MM}; that comes on top of the spread of the material.
   */
  private Reading share(Range range) {
    double middle = (range.from() + range.to()) / 2;
    double length = 2 * ClaspCourse.LENGTH_MM / course.retentive().lengthMm();
    return new Reading.Measured(
        middle, Math.hypot((range.to() - range.from()) / 2, middle * length), "1");
  }

  private static Reading spread(Range range, String unit) {
    return new Reading.Measured(
        (range.from() + range.to()) / 2, (range.to() - range.from()) / 2, unit);
  }

  /**
   * Follows the retentive arm out.
   *
   * @param path withdrawal axis, unit vector
   * @param encirclement least angle that a clasp goes round
   * @param place of its tip
   */
  public static ClaspAction of(
      ClaspCourse course,
      ArmMaterial material,
      ArmStock stock,
      ToothSurface tooth,
      Vec3 path,
      Threshold encirclement,
      Place place) {
    List<Finding> findings = new ArrayList<>();
    findings.add(
        Finding.least(
            encirclement,
            "how far the clasp goes round the tooth",
            place,
            Reading.degrees(course.encirclementDeg(), ClaspCourse.READ_DEG)));
    if (!course.standsOnMark()) {
      return new ClaspAction(course, Optional.empty(), Optional.empty(), findings, ArmAdvice.NONE);
    }
    ArmForces forces = ArmForces.of(course.retentive(), material, tooth, path, stock.rules());
    findings.addAll(forces.findings(stock.rules(), place));
    double soft = material.modulusGpa().from() / material.modulusGpa().to();
    double least =
        soft * stock.rules().leastFriction().value() * forces.leastFriction().peak().normalN();
    double most = stock.rules().mostFriction().value() * forces.mostFriction().peak().normalN();
    return new ClaspAction(
        course,
        Optional.of(forces),
        forces.pullN().map(_ -> new Range(Math.min(least, most), Math.max(least, most))),
        findings,
        ArmAdvice.of(forces, choices(stock, material), tooth, path, stock.rules()));
  }

  /**
   * Other materials that the same arm could be made of; polymers want thicker arms of their own.
   */
  private static List<ArmAdvice.Choice> choices(ArmStock stock, ArmMaterial material) {
    boolean wrought = material.making() == ArmMaterial.Making.WROUGHT;
    return stock.choices().stream()
        .filter(c -> c.material().making() != ArmMaterial.Making.POLYMER)
        .filter(c -> wrought == (c.material().making() == ArmMaterial.Making.WROUGHT))
        .toList();
  }
}
