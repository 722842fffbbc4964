package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rodwork.rules.Verdict;

/**
 * Holds the facts of an abutment against every family of the rulebook, and orders them.
 *
 * <p>What serves comes first, then what serves after preparation, then what hangs on an unknown,
 * then what a preference keeps as a last resort, then the rest; among equals the preferences
 * decide, the weightiest first.
 */
public final class ClaspJudge {
  private final ClaspBook book;

  public ClaspJudge(ClaspBook book) {
    this.book = book;
  }

  /** All families at one abutment. */
  public AbutmentJudgement judge(AbutmentFacts facts) {
    List<Preference> apply = new ArrayList<>();
    Set<Fact> couldReorder = EnumSet.noneOf(Fact.class);
    for (Preference p : book.preferences()) {
      Verdict holds = Condition.all(p.when(), facts::reading);
      if (holds == Verdict.MET) {
        apply.add(p);
      } else if (holds != Verdict.NOT_MET) {
        p.when().stream()
            .filter(c -> !c.judge(facts::reading).decided())
            .forEach(c -> couldReorder.add(c.fact()));
      }
    }
    Comparator<Judgement> order = Judgement.ORDER;
    for (Preference p : apply) {
      order = order.thenComparing(j -> p.rank(j.family()));
    }
    List<Judgement> judged =
        book.families().stream()
            .map(f -> FamilyJudge.best(f, facts, book.fits().value()))
            .map(
                j ->
                    j.ranked(
                        apply.stream().anyMatch(p -> p.lastResort().contains(j.family().id())),
                        sentence(j.family(), apply)))
            .sorted(order)
            .toList();
    return new AbutmentJudgement(facts, judged, couldReorder);
  }

  /** Every third for the tip of a family in which it is not ruled out. */
  public List<AbutmentFacts.Reach> open(Family family, AbutmentFacts facts) {
    return FamilyJudge.open(family, facts, book.fits().value());
  }

  /** Every cut whose size depends on where an arm lies: what it takes is to be measured. */
  public List<WantedCut> wantedCuts(AbutmentFacts facts) {
    return book.families().stream().flatMap(f -> WantedCut.of(f, facts).stream()).toList();
  }

  private static String sentence(Family family, List<Preference> apply) {
    for (Preference p : apply) {
      if (p.names(family)) {
        String place =
            p.first().contains(family.id())
                ? "Preferred: "
                : p.last().contains(family.id()) ? "Put last: " : "A last resort: ";
        return place + p.because() + " (" + p.standing().words() + ").";
      }
    }
    return "No preference of the rulebook names it.";
  }
}
