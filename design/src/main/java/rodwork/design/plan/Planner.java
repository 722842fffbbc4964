package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyClass;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Reading;
import rodwork.survey.Survey;

/**
 * Proposes a plan: a pure function of arch, teeth with chart, survey, abutments, rules and choices.
 */
public final class Planner {
  /** Distances from the margins are needed this far beyond the widest border [mm]. */
  private static final double BEYOND_MM = 8;

  private final Dentition dentition;
  private final Survey survey;
  private final List<Abutment> abutments;
  private final PlanRules rules;
  private final Choices choices;
  private final Ground ground;
  private final Border border;
  private final Jaw jaw;
  private final Map<ToothNumber, CrownBoard> crowns = new HashMap<>();
  private final List<Part.Rest> rests = new ArrayList<>();
  private final List<Part.Clasp> clasps = new ArrayList<>();
  private final List<Part.GuidingPlate> plates = new ArrayList<>();
  private final List<Part.DentureBase> bases = new ArrayList<>();
  private final List<Part.MinorConnector> minors = new ArrayList<>();
  private final List<String> questions = new ArrayList<>();

  private Planner(
      Arch arch,
      Dentition dentition,
      Survey survey,
      List<Abutment> abutments,
      PlanRules rules,
      Choices choices) {
    this.dentition = dentition;
    this.survey = survey;
    this.abutments = abutments;
    this.rules = rules;
    this.choices = choices;
    this.jaw = arch.frame().jaw();
    this.ground = new Ground(arch, dentition.labels(), TriangleTree.of(arch.mesh()));
    this.border =
        new Border(
            ground,
            dentition,
            Math.max(rules.upper().border().value(), rules.lower().border().value()) + BEYOND_MM);
  }

  /**
   * Makes the plan.
   *
   * @param survey of the arch at the path
   * @param abutments as judged at that path; with those without a space
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
      Watch watch) {
    return new Planner(arch, dentition, survey, abutments, rules, choices).plan(watch);
  }

  private Plan plan(Watch watch) {
    checkChoices();
    for (Space space : dentition.openSpaces()) {
      base(space);
    }
    watch.check();
    Map<ToothNumber, List<Abutment>> used = used();
    for (List<Abutment> sides : used.values()) {
      abutment(sides);
      watch.check();
    }
    rests.sort(Comparator.comparing(Part.Rest::tooth));
    Levers levers = new Levers(dentition, ground.frame, rests, bases);
    Optional<FulcrumLine> fulcrum = levers.fulcrum();
    List<Part.IndirectRetainer> indirect = fulcrum.map(f -> indirect(levers, f)).orElse(List.of());
    rests.sort(Comparator.comparing(Part.Rest::tooth));
    watch.check();
    Optional<Part.MajorConnector> connector = connector();
    connector.ifPresent(this::minorConnectors);
    PlanFindings findings = new PlanFindings(dentition, ground, rules, border);
    return new Plan(
        jaw,
        dentition.kennedy().title(),
        survey.axis(),
        choices,
        rests,
        plates,
        clasps,
        minors,
        connector,
        bases,
        fulcrum,
        indirect,
        findings.of(rests, plates, clasps, minors, connector, indirect),
        questions);
  }

  private void checkChoices() {
    Set<ToothNumber> named = new HashSet<>(choices.rests().keySet());
    named.addAll(choices.families().keySet());
    named.addAll(choices.notUsed());
    for (ToothNumber tooth : named) {
      if (!dentition.standing().contains(tooth)) {
        throw PlanProblem.NO_SUCH_TOOTH.with(tooth);
      }
    }
    choices
        .connector()
        .filter(kind -> PlanProblem.isUpper(kind) != (jaw == Jaw.UPPER))
        .ifPresent(
            kind -> {
              throw PlanProblem.OTHER_JAW.with(kind.words(), jaw == Jaw.UPPER ? "upper" : "lower");
            });
  }

  private CrownBoard crown(Tooth tooth) {
    return crowns.computeIfAbsent(tooth.number(), _ -> new CrownBoard(ground.mesh(), tooth));
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
    Optional<Part.DentureBase> base = new BaseMaker(ground, rules).make(space, teeth);
    if (base.isPresent()) {
      bases.add(base.get());
    } else {
      questions.add(
          "The scan shows no ridge at "
              + space.missing()
              + ": no base is laid there; scan again when the ridge can be seen.");
    }
  }

  private boolean filled(Space space) {
    return bases.stream().anyMatch(b -> b.space().equals(space));
  }

  /** Abutments that carry the denture, by tooth, from the patient's right to left. */
  private Map<ToothNumber, List<Abutment>> used() {
    Map<ToothNumber, List<Abutment>> used = new TreeMap<>();
    for (Abutment a : abutments) {
      if (a.space().filter(this::filled).isPresent() && mayCarry(a)) {
        used.computeIfAbsent(a.tooth().number(), _ -> new ArrayList<>()).add(a);
      }
    }
    for (Side side : Side.values()) {
      if (bases.isEmpty()
          || used.keySet().stream().anyMatch(t -> t.side() == side && !t.isAnterior())) {
        continue;
      }
      // A side without a space holds by one tooth, so that the denture does not turn.
      abutments.stream()
          .filter(a -> a.space().isEmpty() && a.tooth().number().side() == side && mayCarry(a))
          .min(
              Comparator.comparing(
                      (Abutment a) ->
                          best(a).map(Judgement::answer).orElse(Judgement.Answer.DOES_NOT_SERVE))
                  .thenComparing(a -> !a.tooth().number().isMolar()))
          .ifPresent(a -> used.computeIfAbsent(a.tooth().number(), _ -> new ArrayList<>()).add(a));
    }
    return used;
  }

  private boolean mayCarry(Abutment a) {
    ToothNumber tooth = a.tooth().number();
    return !choices.notUsed().contains(tooth)
        && dentition.chart().tooth(tooth).abutment() != Answer.NO;
  }

  private static Optional<Judgement> best(Abutment a) {
    return a.judgement().inOrder().stream()
        .filter(j -> j.answer() != Judgement.Answer.DOES_NOT_SERVE)
        .min(Comparator.comparing(Judgement::answer));
  }

  private void abutment(List<Abutment> sides) {
    Tooth tooth = sides.getFirst().tooth();
    CrownBoard crown = crown(tooth);
    clasp(sides, crown);
    Optional<Part.Clasp> clasp =
        clasps.stream().filter(c -> c.tooth().equals(tooth.number())).findFirst();
    Choices.RestChoice chosen = choices.rests().get(tooth.number());
    if (chosen != null) {
      rest(crown, chosen.kind(), chosen.side(), "chosen by a person");
    } else {
      for (Abutment a : sides) {
        boolean free = a.space().filter(Space::freeEnd).isPresent();
        Surface side = free ? a.side().opposite() : a.side();
        RestKind kind = RestMaker.usual(crown);
        boolean there =
            rests.stream()
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
    if (clasp.isEmpty() && !choices.families().containsKey(tooth.number())) {
      questions.add(
          "No kind of clasp serves at "
              + tooth.number()
              + "; change the path or the mouth, or leave it to carry without a clasp.");
    }
  }

  private void rest(CrownBoard crown, RestKind kind, Surface side, String because) {
    new RestMaker(rules.rests())
        .make(crown, kind, side, because)
        .ifPresentOrElse(
            rests::add,
            () ->
                questions.add(
                    "The crown of "
                        + crown.tooth.number()
                        + " has no room on the scan for the outline of "
                        + kind.words()
                        + "; choose another place."));
  }

  private void clasp(List<Abutment> sides, CrownBoard crown) {
    ToothNumber number = crown.tooth.number();
    String family = choices.families().get(number);
    if (Choices.NO_CLASP.equals(family)) {
      return;
    }
    Abutment at = sides.getFirst();
    Judgement judgement = null;
    if (family != null) {
      judgement =
          at.judgement().inOrder().stream()
              .filter(j -> j.family().id().equals(family))
              .findFirst()
              .orElseThrow(() -> PlanProblem.NO_SUCH_FAMILY.with(family, number));
    } else {
      for (Abutment a : sides) {
        Judgement best = best(a).orElse(null);
        if (best != null
            && (judgement == null || best.answer().compareTo(judgement.answer()) < 0)) {
          judgement = best;
          at = a;
        }
      }
    }
    if (judgement == null) {
      return;
    }
    clasps.add(new ClaspMaker(ground).make(crown, at, judgement, family != null));
    if (judgement.answer() == Judgement.Answer.NOT_DECIDED) {
      questions.add(
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

  private void plate(CrownBoard crown, Surface side, rodwork.design.abutment.GuidingPlane plane) {
    int e = side == Surface.MESIAL ? 1 : -1;
    List<Vec3> line = new ArrayList<>();
    double height = crown.heightAt(0, false, 0.4);
    for (int i = -6; i <= 6; i++) {
      crown.fromProximal(i / 6.0 * crown.halfDepth() / 3, height, e).ifPresent(line::add);
    }
    if (line.size() > 1) {
      plates.add(new Part.GuidingPlate(crown.tooth.number(), side, Line.open(line), plane));
    }
  }

  private List<Part.IndirectRetainer> indirect(Levers levers, FulcrumLine fulcrum) {
    List<Part.IndirectRetainer> found = new ArrayList<>();
    for (List<Levers.Candidate> place : levers.candidates(fulcrum, choices.notUsed())) {
      Optional<Part.Rest> rest = Optional.empty();
      for (Levers.Candidate c : place) {
        Tooth tooth = dentition.tooth(c.tooth()).orElseThrow();
        Optional<Part.Rest> there =
            rests.stream()
                .filter(r -> r.tooth().equals(c.tooth()) && r.side() == c.side())
                .findFirst();
        rest =
            there.or(
                () ->
                    new RestMaker(rules.rests())
                        .make(
                            crown(tooth),
                            c.kind(),
                            c.side(),
                            "indirect retainer: the farthest definite rest from the fulcrum line"));
        if (rest.isPresent()) {
          if (there.isEmpty()) {
            rests.add(rest.get());
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

  private Optional<Part.MajorConnector> connector() {
    Set<ToothNumber> spaces = new HashSet<>();
    bases.forEach(b -> spaces.addAll(b.space().missing()));
    Set<ToothNumber> teeth = new HashSet<>();
    rests.forEach(r -> teeth.add(r.tooth()));
    if (bases.isEmpty() || teeth.isEmpty()) {
      return Optional.empty();
    }
    ConnectorMaker maker = new ConnectorMaker(ground, dentition, rules, border, choices);
    ConnectorMaker.Reach reach = new ConnectorMaker.Reach(spaces, teeth);
    Optional<Part.MajorConnector> made =
        jaw == Jaw.UPPER ? upper(maker, reach, spaces) : lower(maker, reach);
    if (made.isEmpty()) {
      questions.add(
          "No major connector could be laid: the scan does not show the surface between the sides;"
              + " scan palate or lingual slope to the fold.");
    }
    return made;
  }

  private Optional<Part.MajorConnector> upper(
      ConnectorMaker maker, ConnectorMaker.Reach reach, Set<ToothNumber> spaces) {
    boolean front = spaces.stream().anyMatch(ToothNumber::isAnterior);
    KennedyClass kennedy = dentition.kennedy().kennedy().orElse(KennedyClass.III);
    long lost = bases.stream().mapToLong(b -> b.space().missing().size()).sum();
    ConnectorKind kind;
    String because;
    if (lost >= rules.upper().plateFromLost().value()) {
      kind = ConnectorKind.PALATAL_PLATE;
      because = lost + " teeth are lost: the palate has to carry";
    } else if (kennedy == KennedyClass.III && !front) {
      kind = ConnectorKind.PALATAL_STRAP;
      because = "bounded spaces behind: teeth carry, and a strap joins the sides";
    } else {
      kind = ConnectorKind.ANTERIOR_POSTERIOR_STRAP;
      because =
          front
              ? "a space in front and support behind: a frame of two straps is stiff and leaves the palate free"
              : "a free end carried by teeth and ridge: a frame of two straps is stiff";
    }
    if (choices.connector().isPresent()) {
      kind = choices.connector().get();
      because = "chosen by a person; proposed would be otherwise where: " + because;
    }
    if (kind == ConnectorKind.ANTERIOR_POSTERIOR_STRAP) {
      Optional<Part.MajorConnector> made = maker.upper(reach, kind, front, because);
      if (made.filter(m -> m.opening().isEmpty()).isPresent() && choices.connector().isEmpty()) {
        return maker.upper(
            reach,
            ConnectorKind.PALATAL_STRAP,
            front,
            because + "; the opening would be shorter than the rules want, so it is closed");
      }
      return made;
    }
    questions.add(
        "Where the vibrating line and a torus lie is not on the chart: no connector lies on either;"
            + " look at the back border in the mouth.");
    return maker.upper(reach, kind, front, because);
  }

  private Optional<Part.MajorConnector> lower(ConnectorMaker maker, ConnectorMaker.Reach reach) {
    OptionalDouble room =
        ToothNumber.allOf(jaw)
            .filter(t -> dentition.standing().contains(t))
            .map(t -> dentition.chart().place(t).floorDepthMm())
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .min();
    Reading reading =
        room.isPresent()
            ? Reading.mm(room.getAsDouble(), 0)
            : new Reading.NotKnown("the chart does not tell the depth of the floor of the mouth");
    double wanted = rules.lower().room().value();
    ConnectorKind kind =
        room.isPresent() && room.getAsDouble() < wanted
            ? ConnectorKind.LINGUAL_PLATE
            : ConnectorKind.LINGUAL_BAR;
    String because =
        room.isEmpty()
            ? "taken until the room to the raised floor of the mouth is measured"
            : kind == ConnectorKind.LINGUAL_BAR
                ? "the room to the raised floor of the mouth suffices"
                : "the room to the raised floor of the mouth is too little for a bar";
    if (room.isEmpty()) {
      questions.add(
          String.format(
              java.util.Locale.ROOT,
              "How far is it from the lingual margins to the raised floor of the mouth? A lingual bar"
                  + " wants %.0f mm; it is drawn as if there were.",
              wanted));
    }
    if (choices.connector().isPresent()) {
      kind = choices.connector().get();
      because = "chosen by a person";
    }
    return maker.lower(reach, kind, reading, because);
  }

  /** From each rest that no base holds, across the margin to the connector. */
  private void minorConnectors(Part.MajorConnector connector) {
    double from =
        jaw == Jaw.UPPER ? rules.upper().border().value() : rules.lower().border().value();
    for (Part.Rest rest : rests) {
      boolean held =
          rest.kind() != RestKind.CINGULUM
              && dentition.spaceBeside(rest.tooth(), rest.side()).filter(this::filled).isPresent();
      if (held) {
        continue;
      }
      border.stations.stream()
          .filter(s -> s.tooth().filter(rest.tooth()::equals).isPresent())
          .min(
              Comparator.comparingDouble(
                  s -> s.at().point().minus(rest.middle()).across(ground.frame.z()).length()))
          .ifPresent(
              s -> {
                List<Vec3> line =
                    new ArrayList<>(ground.laidStraight(rest.middle(), s.at().point()));
                Optional<Vec3> end =
                    connector.kind() == ConnectorKind.LINGUAL_PLATE
                        ? Optional.of(s.at().point())
                        : border.at(s, from, from, 0);
                end.ifPresent(
                    e -> {
                      line.addAll(ground.across(s.at().point(), e));
                      minors.add(
                          new Part.MinorConnector(rest.tooth(), rest.side(), Line.open(line)));
                    });
              });
    }
  }
}
