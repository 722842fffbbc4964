package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.GuidingPlane;
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

  static Optional<Judgement> best(Abutment a) {
    return a.judgement().inOrder().stream()
        .filter(j -> j.answer() != Judgement.Answer.DOES_NOT_SERVE)
        .min(Comparator.comparing(Judgement::answer));
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
        boolean free = a.space().filter(Space::freeEnd).isPresent();
        Surface side = free ? a.side().opposite() : a.side();
        RestKind kind = RestMaker.usual(crown);
        boolean there =
            draft.rests.stream()
                .anyMatch(
                    r ->
                        r.tooth().equals(tooth.number())
                            && (kind == RestKind.CINGULUM || r.side() == side));
        if (!there) {
          rest(
              crown,
              kind,
              side,
              kind == RestKind.CINGULUM
                  ? "a front tooth carries on its cingulum"
                  : free
                      ? "next to a free end the rest lies away from it, so that the base turns"
                          + " without tipping the tooth backwards"
                      : a.space().isPresent()
                          ? "next to a bounded space the rest lies beside it"
                          : "in the embrasure that the clasp crosses");
        }
      }
    }
    for (Abutment a : sides) {
      if (a.space().isPresent()) {
        a.proximalPlane().ifPresent(plane -> plate(crown, a.side(), plane));
      }
    }
    if (clasp.isEmpty() && !draft.choices.families().containsKey(tooth.number())) {
      draft.questions.add(
          "No kind of clasp serves at "
              + tooth.number()
              + "; change the path or the mouth, or leave it to carry without a clasp.");
    }
  }

  private void rest(CrownBoard crown, RestKind kind, Surface side, String because) {
    new RestMaker(draft.rules.rests())
        .make(crown, kind, side, because)
        .ifPresentOrElse(
            draft.rests::add,
            () ->
                draft.questions.add(
                    "The crown of "
                        + crown.tooth.number()
                        + " has no room on the scan for the outline of "
                        + kind.words()
                        + "; choose another place."));
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
      Optional<Judgement> one = family != null ? of(a, family) : best(a);
      if (one.isPresent()
          && (judgement == null || one.get().answer().compareTo(judgement.answer()) < 0)) {
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
      draft.questions.add(
          "No arm of "
              + judgement.family().name()
              + " can be laid at "
              + number
              + ": "
              + why
              + ".");
    }
    if (judgement.answer() == Judgement.Answer.NOT_DECIDED) {
      draft.questions.add(
          "Whether "
              + judgement.family().name()
              + " serves at "
              + number
              + " hangs on: "
              + judgement.undecided().stream()
                  .sorted()
                  .map(f -> f.words())
                  .collect(Collectors.joining(", "))
              + ".");
    }
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
