package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.tooth.Tooth;

/** Lays indirect retainers. */
final class IndirectRetainers {
  private final Draft draft;

  IndirectRetainers(Draft draft) {
    this.draft = draft;
  }

  List<Part.IndirectRetainer> lay(Levers levers, FulcrumLine fulcrum) {
    List<Part.IndirectRetainer> found = new ArrayList<>();
    for (List<Levers.Candidate> place : levers.candidates(fulcrum, draft.choices.notUsed())) {
      Optional<Part.Rest> rest = Optional.empty();
      for (Levers.Candidate c : place) {
        Tooth tooth = draft.dentition.tooth(c.tooth()).orElseThrow();
        Optional<Part.Rest> there =
            draft.rests.stream()
                .filter(r -> r.tooth().equals(c.tooth()) && r.side() == c.side())
                .findFirst();
        rest =
            there.or(
                () ->
                    new RestMaker(draft.rules.rests())
                        .make(
                            draft.crown(tooth),
                            c.kind(),
                            c.side(),
                            "indirect retainer: the farthest definite rest from the fulcrum line"));
        if (rest.isPresent()) {
          if (there.isEmpty()) {
            draft.rests.add(rest.get());
          }
          break;
        }
      }
      rest.ifPresent(
          r -> {
            double distance = Math.abs(fulcrum.offsetMm(r.middle()));
            double end = levers.baseEndMm(fulcrum);
            found.add(new Part.IndirectRetainer(r, distance, end > 0 ? distance / end : 0));
          });
    }
    return found;
  }
}
