package rodwork.design.clasp;

import java.util.List;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Threshold;

/**
 * A kind of clasp.
 *
 * @param id stable name
 * @param name for a person
 * @param surface that carries the retentive tip
 * @param tips where on it the tip may lie, best first
 * @param gauge undercut it takes [mm]
 * @param origin where on the surface the arm begins
 * @param material id of the material of its retentive arm
 * @param deepening how much an undercut that falls short may be deepened [mm]
 * @param clauses what it requires
 */
public record Family(
    String id,
    String name,
    Surface surface,
    List<AbutmentFacts.Spot> tips,
    Threshold gauge,
    AbutmentFacts.Spot origin,
    String material,
    Threshold deepening,
    List<Clause> clauses) {
  public Family {
    tips = List.copyOf(tips);
    clauses = List.copyOf(clauses);
    if (tips.isEmpty()) {
      throw new IllegalArgumentException("the family " + id + " has no place for its tip");
    }
  }
}
