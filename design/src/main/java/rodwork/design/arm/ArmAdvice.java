package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.rules.Range;

/**
 * What to do where an arm is overstressed: other materials on the same curve, or how long it would
 * have to be.
 *
 * @param sentences for a person; empty where the stress stays within the proof stress
 * @param shortly what would hold, in a few words; empty where the stress stays within
 * @param leastShare peak stress of the least stressed other material as a share of its proof
 *     stress; empty where none was tried
 */
public record ArmAdvice(List<String> sentences, String shortly, Optional<Range> leastShare) {
  /** Of an arm that needs none. */
  public static final ArmAdvice NONE = new ArmAdvice(List.of(), "", Optional.empty());

  public ArmAdvice {
    sentences = List.copyOf(sentences);
  }

  /**
   * A material in the sections that arms of it have.
   *
   * @param material what
   * @param root section at the origin
   * @param tip section at the tip
   */
  public record Choice(ArmMaterial material, Section root, Section tip) {}

  /**
   * Advice for an arm.
   *
   * @param forces of the arm as it is
   * @param others choices to try on the same curve
   */
  public static ArmAdvice of(
      ArmForces forces, List<Choice> others, ToothSurface tooth, Vec3 path, ArmRules rules) {
    double limit = rules.stressShare().value();
    if (forces.stressShare().to() <= limit) {
      return NONE;
    }
    List<String> advice = new ArrayList<>();
    Arm arm = forces.arm();
    advice.add(
        String.format(
            Locale.ROOT,
            "%.1f mm of %s are overstressed at this undercut: %s MPa of %s MPa proof stress.",
            arm.lengthMm(),
            forces.material().name(),
            words(forces.stressMpa()),
            words(forces.material().proofMpa())));
    List<String> hold = new ArrayList<>();
    Range best = null;
    for (Choice other : others) {
      if (other.material().equals(forces.material())) {
        continue;
      }
      ArmForces there =
          ArmForces.of(arm.with(other.root(), other.tip()), other.material(), tooth, path, rules);
      if (best == null || there.stressShare().to() < best.to()) {
        best = there.stressShare();
      }
      if (there.stressShare().to() <= limit) {
        hold.add(there.material().name());
        advice.add(
            String.format(
                Locale.ROOT,
                "%s would hold on the same curve: %s MPa of %s MPa.",
                capital(other.material().name()),
                words(there.stressMpa()),
                words(there.material().proofMpa())));
      }
    }
    // A given deflection strains an arm in inverse proportion to the square of its length.
    double longer = arm.lengthMm() * Math.sqrt(forces.stressShare().to() / limit);
    advice.add(
        String.format(
            Locale.ROOT, "Or an arm of the same sections about %.0f mm long.", Math.ceil(longer)));
    hold.add(String.format(Locale.ROOT, "an arm of %.0f mm", Math.ceil(longer)));
    return new ArmAdvice(advice, String.join(" or ", hold), Optional.ofNullable(best));
  }

  private static String words(Range range) {
    return range.to() - range.from() < 0.5
        ? String.format(Locale.ROOT, "%.0f", range.to())
        : String.format(Locale.ROOT, "%.0f to %.0f", range.from(), range.to());
  }

  private static String capital(String name) {
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }
}
