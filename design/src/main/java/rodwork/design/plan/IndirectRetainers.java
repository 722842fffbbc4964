package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.plan.Part.RestKind;

/** Lays indirect retainers: those proposed that a person did not take away, and those added. */
final class IndirectRetainers {
  private final Draft draft;

  IndirectRetainers(Draft draft) {
    this.draft = draft;
  }

  /**
   * Lays them, and adds their rests.
   *
   * @param fulcrum empty where no base can turn: what a person added is laid as a rest all the same
   */
  List<Part.IndirectRetainer> lay(Levers levers, Optional<FulcrumLine> fulcrum) {
    List<Part.IndirectRetainer> found = new ArrayList<>();
    fulcrum.ifPresent(f -> proposed(levers, f, found));
    new TreeMap<>(draft.choices.indirectAdded())
        .forEach((tooth, choice) -> add(tooth, choice, levers, fulcrum, found));
    return found;
  }

  private void proposed(Levers levers, FulcrumLine fulcrum, List<Part.IndirectRetainer> found) {
    for (List<Levers.Candidate> place : levers.candidates(fulcrum, draft::mayCarry)) {
      for (Levers.Candidate c : place) {
        Optional<Part.Rest> rest =
            rest(
                c.tooth(),
                c.kind(),
                c.side(),
                "indirect retainer: the farthest definite rest from the fulcrum line");
        if (rest.isEmpty()) {
          continue;
        }
        // Where the one proposed is taken away the place stays empty: no other is put in its stead.
        if (!draft.choices.indirectTaken().contains(c.tooth())
            && !draft.choices.indirectAdded().containsKey(c.tooth())) {
          lay(rest.get(), levers, fulcrum, found);
        }
        break;
      }
    }
  }

  private void add(
      ToothNumber tooth,
      Choices.RestChoice choice,
      Levers levers,
      Optional<FulcrumLine> fulcrum,
      List<Part.IndirectRetainer> found) {
    Optional<Part.Rest> rest =
        rest(tooth, choice.kind(), choice.side(), "indirect retainer, chosen by a person");
    if (rest.isEmpty()) {
      draft.ask(
          "The crown of ",
          tooth,
          " has no room on the scan for the outline of ",
          choice.kind().words(),
          " as an indirect retainer; choose another place.");
      return;
    }
    if (tooth.isIncisor()) {
      draft.ask(
          "An indirect retainer is chosen on the incisor ",
          tooth,
          ": taught is a canine or premolar, for an incisor is moved by it.");
    }
    if (fulcrum.isPresent()) {
      lay(rest.get(), levers, fulcrum.get(), found);
    } else {
      draft.ask(
          "No base of this plan turns about a fulcrum line: what is chosen at ",
          tooth,
          " as an indirect retainer is a rest like the others.");
      keep(rest.get());
    }
  }

  private Optional<Part.Rest> rest(ToothNumber tooth, RestKind kind, Surface side, String because) {
    return draft.rests.stream()
        .filter(r -> r.tooth().equals(tooth) && r.kind() == kind && r.side() == side)
        .findFirst()
        .or(
            () ->
                new RestMaker(draft.rules.rests())
                    .make(
                        draft.crown(draft.dentition.tooth(tooth).orElseThrow()),
                        kind,
                        side,
                        because));
  }

  private void lay(
      Part.Rest rest, Levers levers, FulcrumLine fulcrum, List<Part.IndirectRetainer> found) {
    keep(rest);
    found.add(levers.retainer(rest, fulcrum));
  }

  private void keep(Part.Rest rest) {
    if (!draft.rests.contains(rest)) {
      draft.rests.add(rest);
    }
  }
}
