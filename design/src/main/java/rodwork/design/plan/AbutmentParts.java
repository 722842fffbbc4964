package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Neighbour;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.Abutments;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.course.ClaspCourse;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;

/** Lays what one tooth carries: its clasp, its rests, its guiding plates. */
final class AbutmentParts {
  private final Draft draft;

  AbutmentParts(Draft draft) {
    this.draft = draft;
  }

  /** The next tooth on the side that a clasp comes from. */
  static Optional<ToothNumber> across(Abutment a) {
    return a.tooth().neighbour(a.side()).map(Neighbour::number);
  }

  private static Optional<Judgement> of(Abutment a, String family) {
    return a.judgement().inOrder().stream().filter(j -> j.family().id().equals(family)).findFirst();
  }

  void lay(List<Abutment> sides) {
    Tooth tooth = sides.getFirst().tooth();
    CrownBoard crown = draft.crown(tooth);
    clasp(sides, crown);
    Optional<Part.Clasp> clasp =
        draft.clasps.stream().filter(c -> c.tooth().equals(tooth.number())).findFirst();
    Choices.RestChoice chosen = draft.choices.rests().get(tooth.number());
    if (chosen != null) {
      rest(crown, chosen.kind(), chosen.side(), "chosen by a person");
    } else {
      for (Abutment a : sides) {
        clasp
            .filter(c -> c.side() == a.side())
            .map(c -> c.judgement().family())
            .filter(family -> !family.rests().isEmpty())
            .ifPresentOrElse(family -> rests(a, crown, family), () -> rests(a, crown));
      }
    }
    for (Abutment a : sides) {
      if (a.space().isPresent()) {
        a.proximalPlane().ifPresent(plane -> plate(crown, a.side(), plane));
      }
    }
    if (clasp.isEmpty() && !draft.choices.families().containsKey(tooth.number())) {
      draft.ask(
          "No kind of clasp serves at ",
          tooth.number(),
          "; change the path or the mouth, or leave it to carry without a clasp.");
    }
  }

  /** Where no family asks for more: beside a bounded space, away from a free end. */
  private void rests(Abutment a, CrownBoard crown) {
    boolean free = a.space().filter(Space::freeEnd).isPresent();
    ifNew(
        crown,
        free ? a.side().opposite() : a.side(),
        free
            ? "next to a free end the rest lies away from it, so that the base turns without tipping"
                + " the tooth backwards"
            : a.space().isPresent()
                ? "next to a bounded space the rest lies beside it"
                : "in the embrasure that the clasp crosses");
  }

  private void rests(Abutment a, CrownBoard crown, Family family) {
    for (Family.RestAt at : new TreeSet<>(family.rests())) {
      String because = family.name() + ": ";
      switch (at) {
        case NEAR ->
            ifNew(
                crown,
                a.side(),
                because
                    + (a.space().isPresent()
                        ? "a rest beside the space"
                        : "a rest in the embrasure that it crosses"));
        case FAR ->
            ifNew(crown, a.side().opposite(), because + "a rest on the side away from the space");
        case ORIGIN ->
            ifNew(crown, family.begins(a.side()), because + "a rest where its arm begins");
        case NEIGHBOUR ->
            across(a)
                .flatMap(draft.dentition::tooth)
                .filter(next -> draft.dentition.standing().contains(next.number()))
                .filter(next -> draft.mayCarry(next.number()))
                .ifPresentOrElse(
                    next ->
                        ifNew(
                            draft.crown(next),
                            a.side().opposite(),
                            because + "a rest on the next tooth too, or the two are wedged apart"),
                    () ->
                        draft.ask(
                            "The ",
                            family.name(),
                            " at ",
                            a.tooth().number(),
                            " wants a rest on the next tooth too, and none that may carry stands there."));
      }
    }
  }

  private void ifNew(CrownBoard crown, Surface side, String because) {
    RestKind kind = RestMaker.usual(crown);
    boolean there =
        draft.rests.stream()
            .anyMatch(
                r ->
                    r.tooth().equals(crown.tooth.number())
                        && (kind == RestKind.CINGULUM || r.side() == side));
    if (!there) {
      rest(
          crown,
          kind,
          side,
          kind == RestKind.CINGULUM ? "a front tooth carries on its cingulum" : because);
    }
  }

  private void rest(CrownBoard crown, RestKind kind, Surface side, String because) {
    new RestMaker(draft.rules.rests())
        .make(crown, kind, side, because)
        .ifPresentOrElse(
            draft.rests::add,
            () ->
                draft.ask(
                    "The crown of ",
                    crown.tooth.number(),
                    " has no room on the scan for the outline of ",
                    kind.words(),
                    "; choose another place."));
  }

  private void clasp(List<Abutment> sides, CrownBoard crown) {
    ToothNumber number = crown.tooth.number();
    String family = draft.choices.families().get(number);
    if (Choices.NONE_THERE.equals(family)) {
      return;
    }
    Abutment at = sides.getFirst();
    Judgement judgement = null;
    for (Abutment a : sides) {
      Optional<Judgement> one = family != null ? of(a, family) : a.judgement().first();
      if (one.isPresent() && shaped(a, one.get())) {
        judgement = one.get();
        at = a;
        break;
      }
      if (one.isPresent()
          && (judgement == null || Judgement.ORDER.compare(one.get(), judgement) < 0)) {
        judgement = one.get();
        at = a;
      }
    }
    if (judgement == null && family != null) {
      throw PlanProblem.NO_SUCH_FAMILY.with(family, number);
    }
    if (judgement == null) {
      return;
    }
    ClaspCourse.Attempt laid = at.courses().get(judgement.family().id());
    String why = laid == null ? "its arms were not laid out" : laid.why();
    Optional<ClaspCourse> course = laid == null ? Optional.empty() : laid.course();
    draft.clasps.add(new Part.Clasp(number, at.side(), judgement, course, why, family != null));
    if (course.isEmpty()) {
      draft.ask(
          "No arm of ", judgement.family().name(), " can be laid at ", number, ": ", why, ".");
    }
    if (judgement.answer() == Judgement.Answer.NOT_DECIDED) {
      draft.ask(
          "Whether ",
          judgement.family().name(),
          " serves at ",
          number,
          " hangs on: ",
          judgement.undecided().stream()
              .sorted()
              .map(at.judgement().facts()::words)
              .collect(Collectors.joining(", ")),
          ".");
    }
  }

  /** Whether a person shaped the arm that comes from this side. */
  private boolean shaped(Abutment a, Judgement judgement) {
    return draft
        .choices
        .arms()
        .containsKey(new Abutments.ArmKey(a.tooth().number(), a.side(), judgement.family().id()));
  }

  private void plate(CrownBoard crown, Surface side, GuidingPlane plane) {
    int e = side == Surface.MESIAL ? 1 : -1;
    List<Vec3> line = new ArrayList<>();
    double height = crown.heightAt(0, false, 0.4);
    for (int i = -6; i <= 6; i++) {
      crown.fromProximal(i / 6.0 * crown.halfDepth() / 3, height, e).ifPresent(line::add);
    }
    if (line.size() > 1) {
      draft.plates.add(new Part.GuidingPlate(crown.tooth.number(), side, Line.open(line), plane));
    }
  }
}
