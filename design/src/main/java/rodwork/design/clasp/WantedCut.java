package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;

/**
 * A cut whose size depends on where an arm lies: a survey line that is lowered because the arm
 * lacks room above it, or a plane for the arm against it.
 *
 * @param reach the arm that lacks it
 * @param enamel the fact that is to say what it takes
 * @param site where it is cut
 * @param byMm how far down a line goes, or how high a plane is [mm]
 */
public record WantedCut(
    AbutmentFacts.Reach reach, Fact enamel, AbutmentFacts.Site site, double byMm) {

  /** All that the clauses of a family ask for, with its tip in each of the thirds it may lie in. */
  static List<WantedCut> of(Family family, AbutmentFacts facts) {
    List<WantedCut> all = new ArrayList<>();
    for (AbutmentFacts.Spot spot : family.tips()) {
      TipPlace tip = new TipPlace(facts, family, spot);
      for (Clause clause : family.clauses()) {
        if (clause.otherwise() instanceof Clause.Consequence.Prepares prepares
            && prepares.by().filter(Fact::ofCut).isPresent()
            && Condition.all(clause.when(), tip::reading) != Verdict.NOT_MET) {
          Fact enamel = prepares.by().get();
          size(enamel, clause, tip)
              .ifPresent(
                  by ->
                      all.add(new WantedCut(tip.reach(), enamel, site(enamel, family, facts), by)));
        }
      }
    }
    return all;
  }

  private static Optional<Double> size(Fact enamel, Clause clause, TipPlace tip) {
    Limit limit = clause.wants().limit(tip::reading);
    if (enamel == Fact.RECIPROCAL_ENAMEL) {
      return tip.reading(Fact.TIP_TRAVEL) instanceof Reading.Measured
              && limit instanceof Limit.Least high
          ? Optional.of(high.value())
          : Optional.empty();
    }
    return FamilyJudge.missing(limit, tip.reading(clause.wants().fact()))
            instanceof Reading.Measured missing
        ? Optional.of(missing.value())
        : Optional.empty();
  }

  private static AbutmentFacts.Site site(Fact enamel, Family family, AbutmentFacts facts) {
    return switch (enamel) {
      case LOWERING_ENAMEL_ORIGIN ->
          new AbutmentFacts.Site(family.surface(), facts.across(family.origin()));
      case RECIPROCAL_ENAMEL ->
          new AbutmentFacts.Site(
              family.surface() == Surface.LINGUAL ? Surface.FACIAL : Surface.LINGUAL,
              AcrossThird.MIDDLE);
      default -> new AbutmentFacts.Site(family.surface(), AcrossThird.MIDDLE);
    };
  }
}
