package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.anatomy.space.Space;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.survey.Survey;

/**
 * Proposes a plan: a pure function of arch, teeth with chart, survey, abutments, rules and choices.
 */
public final class Planner {
  private final Survey survey;
  private final List<Abutment> abutments;
  private final Draft draft;
  private final Dentition dentition;
  private final Choices choices;
  private final Jaw jaw;

  private Planner(Draft draft, Survey survey, List<Abutment> abutments) {
    this.draft = draft;
    this.survey = survey;
    this.abutments = abutments;
    this.dentition = draft.dentition;
    this.choices = draft.choices;
    this.jaw = draft.ground.frame.jaw();
  }

  /**
   * Makes the plan.
   *
   * @param survey of the arch at the path
   * @param abutments as judged at that path; with those without a space
   * @param opposing the room to the other jaw
   * @param watch stops the work
   * @throws Refusal if a choice names a tooth that does not stand, or a family that is not known
   */
  public static Plan of(
      Arch arch,
      Dentition dentition,
      Survey survey,
      List<Abutment> abutments,
      PlanRules rules,
      Choices choices,
      OpposingRoom opposing,
      Watch watch) {
    return new Planner(new Draft(arch, dentition, rules, choices, opposing), survey, abutments)
        .plan(watch);
  }

  private Plan plan(Watch watch) {
    checkChoices();
    for (Space space : dentition.openSpaces()) {
      base(space);
    }
    watch.check();
    AbutmentParts parts = new AbutmentParts(draft);
    for (List<Abutment> sides : used().values()) {
      parts.lay(sides);
      watch.check();
    }
    if (!draft.bases.isEmpty() && dentition.kennedy().kennedy().isEmpty()) {
      draft.ask(
          "The class is not decided: answer its questions; until then the plan carries on teeth"
              + " alone, as for bounded spaces.");
    }
    draft.rests.sort(Comparator.comparing(Part.Rest::tooth));
    Levers levers = new Levers(dentition, draft.ground.frame, draft.rests, draft.bases);
    Optional<FulcrumLine> fulcrum = levers.fulcrum();
    List<Part.IndirectRetainer> indirect = new IndirectRetainers(draft).lay(levers, fulcrum);
    draft.rests.sort(Comparator.comparing(Part.Rest::tooth));
    watch.check();
    ConnectorParts connectors = new ConnectorParts(draft);
    Optional<Part.MajorConnector> connector = connectors.major();
    connector.ifPresent(connectors::minor);
    unknownTissue(connector.isPresent());
    List<TorusMark> tori = draft.tori.marks(connector);
    PlanFindings findings = new PlanFindings(draft);
    return new Plan(
        jaw,
        dentition.kennedy().title(),
        survey.axis(),
        choices,
        draft.rests,
        draft.plates,
        draft.clasps,
        draft.minors,
        connector,
        draft.bases,
        fulcrum,
        indirect,
        tori,
        Stream.concat(
                TiltFindings.of(survey, draft.ground.frame).stream(),
                findings.of(connector, tori, indirect, fulcrum.map(_ -> levers)).stream())
            .toList(),
        draft.questions);
  }

  private void checkChoices() {
    Set<ToothNumber> named = new HashSet<>(choices.rests().keySet());
    named.addAll(choices.families().keySet());
    named.addAll(choices.notUsed());
    named.addAll(choices.indirectAdded().keySet());
    named.addAll(choices.indirectTaken());
    choices.arms().keySet().forEach(arm -> named.add(arm.tooth()));
    for (ToothNumber tooth : named) {
      if (!dentition.standing().contains(tooth)) {
        throw PlanProblem.NO_SUCH_TOOTH.with(tooth);
      }
    }
    Set<ToothNumber> laid = new HashSet<>(choices.rests().keySet());
    laid.addAll(choices.indirectAdded().keySet());
    choices.families().entrySet().stream()
        .filter(family -> !family.getValue().equals(Choices.NONE_THERE))
        .forEach(family -> laid.add(family.getKey()));
    for (ToothNumber tooth : laid) {
      if (dentition.isImplant(tooth)) {
        throw PlanProblem.ON_IMPLANT.with(tooth);
      }
    }
    choices
        .connector()
        .filter(kind -> kind.isUpper() != (jaw == Jaw.UPPER))
        .ifPresent(
            kind -> {
              throw PlanProblem.OTHER_JAW.with(kind.words(), jaw == Jaw.UPPER ? "upper" : "lower");
            });
  }

  private boolean replaced(ToothNumber tooth) {
    return dentition.chart().tooth(tooth).replace() != Answer.NO;
  }

  private void base(Space space) {
    List<Space.Position> teeth =
        space.positions().stream().filter(p -> replaced(p.tooth())).toList();
    if (teeth.isEmpty() && space.missing().stream().noneMatch(this::replaced)) {
      return;
    }
    List<List<ToothNumber>> frena =
        Notch.frena(
            jaw, t -> space.has(t) && dentition.chart().place(t).facialFrenum() == Answer.YES);
    Optional<Part.DentureBase> base =
        new BaseMaker(draft.ground, draft.rules).make(space, teeth, frena);
    if (base.isPresent()) {
      draft.bases.add(base.get());
      for (List<ToothNumber> frenum : frena) {
        draft.ask(
            "A facial frenum lies at ",
            frenum,
            ": the border of the base is notched there; look at it in the mouth with the cheek or"
                + " lip drawn out.");
      }
    } else {
      draft.ask(
          "The scan shows no ridge at ",
          space.missing(),
          ": no base is laid there; scan again when the ridge can be seen.");
    }
  }

  /** What of the tissue the chart does not tell, and would change borders or connector. */
  private void unknownTissue(boolean laid) {
    List<ToothNumber> notSaid =
        draft.bases.stream()
            .flatMap(b -> b.space().missing().stream())
            .filter(t -> !dentition.chart().place(t).facialFrenum().known())
            .toList();
    if (!notSaid.isEmpty()) {
      draft.ask(
          "Is there a frenum to facial at ",
          notSaid,
          "? Where the chart does not say, the border of the base has no notch.");
    }
    if (draft.bases.isEmpty()) {
      return;
    }
    List<Torus.Site> tori = draft.tori.notKnown();
    if (!tori.isEmpty()) {
      draft.ask(
          "Is there a "
              + tori.stream().map(Torus.Site::words).collect(Collectors.joining(" or a "))
              + "? The chart does not say; "
              + (laid
                  ? "the connector is laid as if there were none."
                  : "a connector goes round it."));
    }
    boolean tongue =
        ToothNumber.allOf(jaw)
            .anyMatch(t -> dentition.chart().place(t).lingualFrenum() == Answer.YES);
    boolean front =
        Stream.of(31, 41)
            .allMatch(t -> dentition.chart().place(ToothNumber.of(t)).lingualFrenum() == Answer.NO);
    if (jaw == Jaw.LOWER && !tongue && !front) {
      draft.ask(
          "Does a lingual frenum come near the margin at ",
          List.of(ToothNumber.of(41), ToothNumber.of(31)),
          laid
              ? "? The chart does not say; the connector has no notch."
              : "? The chart does not say; a connector has a notch there.");
    }
  }

  /** Abutments that carry the denture, by tooth, from the patient's right to left. */
  private Map<ToothNumber, List<Abutment>> used() {
    Map<ToothNumber, List<Abutment>> used = new TreeMap<>();
    for (Abutment a : abutments) {
      if (a.space().filter(draft::filled).isPresent() && draft.mayCarry(a.tooth().number())) {
        used.computeIfAbsent(a.tooth().number(), _ -> new ArrayList<>()).add(a);
      }
    }
    for (Side side : Side.values()) {
      if (draft.bases.isEmpty()
          || used.keySet().stream().anyMatch(t -> t.side() == side && !t.isAnterior())) {
        continue;
      }
      // A side without a space holds by one tooth, or by both of an embrasure, so that the denture
      // does not turn.
      List<Abutment> there =
          abutments.stream()
              .filter(a -> a.space().isEmpty() && a.tooth().number().side() == side)
              .filter(a -> draft.mayCarry(a.tooth().number()))
              .sorted(
                  Comparator.comparing(
                          (Abutment a) -> a.judgement().inOrder().getFirst(), Judgement.ORDER)
                      .thenComparing(a -> !a.tooth().number().isMolar()))
              .toList();
      List<Abutment> taken = new ArrayList<>(there.stream().limit(1).toList());
      if (!taken.isEmpty() && pairs(taken.getFirst())) {
        Optional<ToothNumber> across = AbutmentParts.across(taken.getFirst());
        there.stream()
            .skip(1)
            .filter(a -> across.equals(Optional.of(a.tooth().number())) && pairs(a))
            .forEach(taken::add);
      }
      taken.forEach(a -> used.computeIfAbsent(a.tooth().number(), _ -> new ArrayList<>()).add(a));
    }
    tooLoose();
    implants();
    return used;
  }

  /** Whether what comes first at an abutment comes in pairs, across an embrasure. */
  private static boolean pairs(Abutment a) {
    return a.judgement()
        .first()
        .filter(j -> j.family().rests().contains(Family.RestAt.NEIGHBOUR))
        .isPresent();
  }

  private void implants() {
    List<ToothNumber> implants =
        dentition.standing().stream().filter(dentition::isImplant).toList();
    if (!implants.isEmpty()) {
      draft.ask(
          "The chart calls ",
          implants,
          " implants: recognised, and not judged. Nothing is laid on them and nothing is cut; decide"
              + " with whoever placed them whether the denture may touch them.");
    }
  }

  private void tooLoose() {
    abutments.stream()
        .map(a -> a.tooth().number())
        .distinct()
        .filter(t -> draft.tooLoose(t) && !draft.mayCarry(t))
        .filter(t -> dentition.chart().tooth(t).abutment() != Answer.NO)
        .forEach(
            t ->
                draft.ask(
                    t,
                    " is charted as too loose to carry (mobility ",
                    dentition.chart().tooth(t).mobility(),
                    "; ",
                    draft.rules.counts().mobility().source(),
                    "): nothing is laid on it. Say in the chart whether it stays, and whether it"
                        + " shall carry."));
  }
}
