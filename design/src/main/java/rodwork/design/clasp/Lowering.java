package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;

/**
 * A survey line that a family would have lowered, because its arm lacks room above it.
 *
 * @param reach the arm that lacks it
 * @param enamel the fact that is to say what it takes
 * @param site where the line is lowered
 * @param byMm how far [mm]
 */
public record Lowering(
    AbutmentFacts.Reach reach, Fact enamel, AbutmentFacts.Site site, double byMm) {

  /** All that the clauses of a family ask for, with its tip in each of the thirds it may lie in. */
  static List<Lowering> of(Family family, AbutmentFacts facts) {
    List<Lowering> all = new ArrayList<>();
    for (AbutmentFacts.Spot spot : family.tips()) {
      TipPlace tip = new TipPlace(facts, family, spot);
      for (Clause clause : family.clauses()) {
        if (clause.otherwise() instanceof Clause.Consequence.Prepares prepares
            && prepares.by().filter(Fact::ofLowering).isPresent()
            && Condition.all(clause.when(), tip::reading) != Verdict.NOT_MET) {
          Fact enamel = prepares.by().get();
          Reading missing =
              FamilyJudge.missing(
                  clause.wants().limit(tip::reading), tip.reading(clause.wants().fact()));
          if (missing instanceof Reading.Measured by) {
            AcrossThird third =
                enamel == Fact.LOWERING_ENAMEL_ORIGIN
                    ? facts.across(family.origin())
                    : AcrossThird.MIDDLE;
            all.add(
                new Lowering(
                    tip.reach(),
                    enamel,
                    new AbutmentFacts.Site(family.surface(), third),
                    by.value()));
          }
        }
      }
    }
    return all;
  }
}
