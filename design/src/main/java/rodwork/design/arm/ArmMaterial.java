package rodwork.design.arm;

import java.util.List;
import rodwork.rules.Range;
import rodwork.rules.Standing;

/**
 * What an arm is made of.
 *
 * @param id stable name
 * @param name for a person
 * @param making how an arm of it comes about
 * @param modulusGpa Young's modulus [GPa]
 * @param proofMpa stress at which 0.2 % set remains [MPa]; for polymers the strength given instead
 * @param poisson Poisson's ratio
 * @param source where the figures come from
 * @param standing how far they can be trusted
 * @param cautions what to say whenever it is chosen
 */
public record ArmMaterial(
    String id,
    String name,
    Making making,
    Range modulusGpa,
    Range proofMpa,
    double poisson,
    String source,
    Standing standing,
    List<String> cautions) {
  /** How an arm comes about. */
  public enum Making {
    CAST,
    PRINTED,
    WROUGHT,
    POLYMER
  }

  public ArmMaterial {
    if (!(modulusGpa.from() > 0) || !(proofMpa.from() > 0) || !(poisson >= 0 && poisson < 0.5)) {
      throw new IllegalArgumentException(
          "material " + id + " lacks modulus, proof stress or ratio");
    }
    cautions = List.copyOf(cautions);
  }
}
