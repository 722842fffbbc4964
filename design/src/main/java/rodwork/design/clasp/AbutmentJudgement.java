package rodwork.design.clasp;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All families at one abutment.
 *
 * @param facts what was known
 * @param inOrder what serves first, in the order of the preferences
 * @param couldReorder facts that are not known and could change the order
 */
public record AbutmentJudgement(
    AbutmentFacts facts, List<Judgement> inOrder, Set<Fact> couldReorder) {
  public AbutmentJudgement {
    inOrder = List.copyOf(inOrder);
    couldReorder = Set.copyOf(couldReorder);
  }

  /** What comes first of all that is not ruled out. */
  public Optional<Judgement> first() {
    return inOrder.stream().filter(j -> j.answer() != Judgement.Answer.DOES_NOT_SERVE).findFirst();
  }

  /** The judgement of a family. */
  public Judgement of(String family) {
    return inOrder.stream()
        .filter(j -> j.family().id().equals(family))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no family " + family));
  }
}
