package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.cut.Cut;
import rodwork.design.cut.CutFrame;
import rodwork.design.cut.PreparedCast;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.design.plan.Part.RestKind;
import rodwork.design.plan.Plan;
import rodwork.design.preparation.Step.Kind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;
import rodwork.survey.plane.PlaneRules;

/**
 * Lists the preparation of the mouth that a plan wants: a pure function of arch, teeth, abutments,
 * plan and rules.
 *
 * <p>Each cut is laid on the crown and measured there. One that takes more than may be taken is
 * made smaller as far as it still serves, and is refused otherwise. A seat keeps the depth that a
 * rest wants: where that is more than the enamel there, its step says so.
 */
public final class Preparer {
  private static final int SEAT_ROUNDS = 12;

  /** So exactly is a seat as deep as its rest wants [mm]. */
  private static final double SEAT_TRUE_MM = 0.002;

  /** An occlusal seat is this much longer than its rest, so that it runs out over the ridge. */
  private static final double SEAT_LONGER = 1.1;

  private static final String NO_CLASP = "no kind of clasp serves";

  private final StepBook book;

  private Preparer(StepBook book) {
    this.book = book;
  }

  /**
   * What the list goes by.
   *
   * @param own limits of cuts
   * @param planes guiding planes
   * @param tipFromMargin least distance of a tip from the margin
   * @param scanAccuracy how exactly a scan tells a length
   */
  public record Rules(
      PreparationRules own, PlaneRules planes, Threshold tipFromMargin, Threshold scanAccuracy) {}

  /**
   * Makes the list.
   *
   * @param abutments that the plan was made from
   */
  public static MouthPreparation of(
      Arch arch, Dentition dentition, List<Abutment> abutments, Plan plan, Rules rules) {
    return new Preparer(new StepBook(arch, dentition, plan, rules)).list(abutments);
  }

  private MouthPreparation list(List<Abutment> abutments) {
    PlaneCuts planes = new PlaneCuts(book);
    ClaspCuts clasps = new ClaspCuts(book);
    for (Part.GuidingPlate plate : book.plan.plates()) {
      planes.plane(plate);
    }
    for (Part.Clasp clasp : book.plan.clasps()) {
      abutments.stream()
          .filter(a -> a.tooth().number().equals(clasp.tooth()) && a.side() == clasp.side())
          .findFirst()
          .ifPresent(a -> clasps.clasp(clasp, a));
    }
    for (Part.Rest rest : book.plan.rests()) {
      seat(rest);
    }
    withoutClasp(abutments);
    crowns();
    List<CrownOrder> orders = orders();
    book.steps.sort(Comparator.comparing(Step::kind).thenComparing(Step::tooth));
    List<Step> numbered = new ArrayList<>();
    for (Step step : book.steps) {
      numbered.add(step.numbered(numbered.size() + 1));
    }
    return new MouthPreparation(numbered, book.refused, general(numbered), orders);
  }

  /**
   * Surveyed crowns as orders of their own. Where the chart says that one is made, nothing is cut
   * on its tooth: planes, seats and undercut are made in the crown.
   */
  private List<CrownOrder> orders() {
    double margin = book.rules.tipFromMargin().value();
    List<CrownOrder> orders = new ArrayList<>();
    for (ToothNumber tooth : book.dentition.standing()) {
      if (book.dentition.isImplant(tooth)) {
        continue;
      }
      if (CrownOrder.decided(book.dentition, tooth)) {
        book.steps.removeIf(s -> s.tooth().equals(tooth));
        book.refused.removeIf(r -> r.tooth().equals(tooth));
        List<String> because = List.of("the chart says that the tooth gets one");
        orders.add(CrownOrder.of(tooth, true, because, book.plan, margin));
        book.steps.add(
            crown(
                tooth,
                "surveyed crown, ordered on its own: nothing is cut on this tooth but for it",
                List.of(),
                List.of("the crown's seat wants more room than the rest alone")));
      } else if (book.steps.stream()
          .anyMatch(s -> s.kind() == Kind.SURVEYED_CROWN && s.tooth().equals(tooth))) {
        orders.add(CrownOrder.of(tooth, false, book.unserved(tooth), book.plan, margin));
        book.steps.replaceAll(
            s ->
                s.tooth().equals(tooth) && s.kind() != Kind.SURVEYED_CROWN
                    ? s.minding(
                        "not on the tooth where the surveyed crown is made: in the crown then")
                    : s);
      }
    }
    return orders;
  }

  private Step crown(
      ToothNumber number, String what, List<Finding> findings, List<String> cautions) {
    return new Step(
        0,
        Kind.SURVEYED_CROWN,
        number,
        Surface.OCCLUSAL,
        what,
        book.tooth(number).centroid(),
        Double.NaN,
        Double.NaN,
        Double.NaN,
        findings,
        cautions,
        Optional.empty(),
        Optional.empty());
  }

  private boolean besideFreeEnd(ToothNumber tooth) {
    return Stream.of(Surface.MESIAL, Surface.DISTAL)
        .flatMap(side -> book.dentition.spaceBeside(tooth, side).stream())
        .anyMatch(Space::freeEnd);
  }

  private List<String> general(List<Step> steps) {
    if (steps.isEmpty()) {
      return List.of();
    }
    List<String> general = new ArrayList<>();
    if (book.plan.majorConnector().isEmpty() && !book.plan.bases().isEmpty()) {
      general.add("No major connector could be laid: cut nothing before the plan is whole.");
    }
    general.add(
        "Before the first cut: thickness of enamel by radiograph; cut a stone copy of the cast"
            + " first.");
    if (steps.stream().anyMatch(s -> s.kind() == Kind.GUIDING_PLANE)) {
      general.add("Guiding planes: parallel to the path, curved across like the tooth.");
    }
    if (steps.stream().anyMatch(s -> s.kind() == Kind.REST_SEAT)) {
      general.add(
          "Seats: the floor inclined to the middle of the tooth, under 90° to the minor connector;"
              + " stop where dentine shows, and restore the seat where it is reached.");
    }
    if (steps.stream().anyMatch(s -> s.kind() == Kind.REST_SEAT && besideFreeEnd(s.tooth()))) {
      general.add(
          "Seats next to a free end: shallow and rounded like a saucer, so that the rest can turn as"
              + " the base sinks (teaching text: Brainscape deck 20788809).");
    }
    general.add("After the last cut: polish every cut surface and apply fluoride.");
    general.add(
        "Then the final impression, and survey the new cast at this path before the laboratory"
            + " begins.");
    return general;
  }

  private void seat(Part.Rest rest) {
    Tooth tooth = book.tooth(rest.tooth());
    boolean occlusal = rest.kind() == RestKind.OCCLUSAL || rest.kind() == RestKind.EXTENDED;
    Vec3 axis = tooth.axes().axis();
    Vec3 down =
        rest.kind() == RestKind.CINGULUM
            ? tooth.axes().facial().minus(axis).unit()
            : axis.times(-1);
    Vec3 open = occlusal ? tooth.axes().outOf(rest.side()).across(down).unit() : Vec3.ZERO;
    double halfLength = occlusal ? SEAT_LONGER * rest.lengthMm() / 2 : rest.widthMm() / 2;
    double halfWidth = (occlusal ? rest.widthMm() : rest.lengthMm()) / 2;
    double rise = occlusal ? SEAT_LONGER * book.rules.own().seatRise().value() : 0;
    Cut.Seat seat =
        new Cut.Seat(rest.middle(), down, open, halfLength, halfWidth, rest.depthMm(), rise);
    // Ridge and cusps stand higher than the middle: no place of the seat shall be deeper than
    // wanted.
    for (int i = 0; i < SEAT_ROUNDS; i++) {
      double over = PreparedCast.taken(book.arch.mesh(), new Applied(tooth, seat)).greatestMm();
      if (Math.abs(over - rest.depthMm()) < SEAT_TRUE_MM) {
        break;
      }
      seat = seat.shallower(over - rest.depthMm());
    }
    Applied applied = new Applied(tooth, seat);
    Vec3 across = occlusal ? open : tooth.axes().facial().times(-1);
    CutFrame frame = new CutFrame(rest.middle(), across.across(axis).unit(), axis);
    PreparationRules own = book.rules.own();
    // How thick enamel is on a cingulum or an edge is not known: the depth that the rest wants is.
    Threshold enamel = own.seatEnamel();
    Threshold rule =
        occlusal
            ? enamel
            : rest.kind() == RestKind.CINGULUM ? own.cingulumDepth() : own.incisalDepth();
    List<Finding> findings = new ArrayList<>();
    findings.add(
        Finding.of(
            rule.id(),
            "depth of the seat",
            StepBook.at(tooth, rest.kind().words(), rest.middle()),
            Reading.mm(rest.depthMm(), 0),
            occlusal
                ? new Limit.Most(rule.value(), rule.unit())
                : new Limit.Least(rule.value(), rule.unit()),
            rule.source(),
            rule.standing()));
    if (occlusal) {
      findings.add(floor(rest, tooth, seat));
    }
    List<String> cautions =
        !occlusal
            ? List.of("how thick the enamel is there is not known: stay in it")
            : findings.getFirst().verdict() == Verdict.NOT_MET
                ? List.of(
                    String.format(Locale.ROOT, "over %.2f mm: dentine may be near", enamel.value()))
                : List.of();
    book.step(
        Kind.REST_SEAT,
        tooth,
        rest.kind() == RestKind.CINGULUM ? Surface.LINGUAL : Surface.OCCLUSAL,
        String.format(
            Locale.ROOT,
            "seat of the %s%s, %.1f × %.1f mm",
            rest.kind().words(),
            rest.side() == Surface.LINGUAL ? "" : ", " + StepBook.word(rest.side()),
            rest.lengthMm(),
            rest.widthMm()),
        rest.middle(),
        rest.lengthMm(),
        applied,
        0,
        frame,
        findings,
        cautions);
  }

  /** Under a right angle, load drives the rest towards the middle of its tooth. */
  private Finding floor(Part.Rest rest, Tooth tooth, Cut.Seat seat) {
    Threshold most = book.rules.own().seatAngle();
    double cosine = -seat.floor().dot(book.plan.axis());
    return Finding.of(
        most.id(),
        "angle of the seat's floor to the minor connector",
        StepBook.at(tooth, rest.kind().words(), rest.middle()),
        Reading.degrees(Math.toDegrees(Math.acos(Math.clamp(cosine, -1, 1))), 0),
        new Limit.Most(most.value(), most.unit()),
        most.source(),
        most.standing());
  }

  private void withoutClasp(List<Abutment> abutments) {
    for (Abutment a : abutments) {
      ToothNumber number = a.tooth().number();
      boolean wanted =
          a.space().isPresent()
              && !book.plan.rests(number).isEmpty()
              && !Choices.NONE_THERE.equals(book.plan.choices().families().get(number));
      if (wanted
          && book.plan.clasp(number).isEmpty()
          && !book.unserved(number).contains(NO_CLASP)) {
        book.unserved(number).add(NO_CLASP);
      }
    }
  }

  /** A crown where several functions want what no cut gives: McCracken, Stewart, from memory. */
  private void crowns() {
    Threshold from = book.rules.own().crownFrom();
    book.unserved.forEach(
        (number, why) -> {
          if (why.size() < from.value()) {
            return;
          }
          Tooth tooth = book.tooth(number);
          ToothEntry entry = book.dentition.chart().tooth(number);
          if (CrownOrder.decided(book.dentition, number)) {
            return;
          }
          book.steps.add(
              crown(
                  number,
                  "consider a surveyed crown, its contours made at this path: planes, rest seat and"
                      + " undercut in it, in place of the cuts that are not possible",
                  List.of(
                      Finding.of(
                          from.id(),
                          "functions that no cut can serve",
                          StepBook.at(tooth, "crown", tooth.centroid()),
                          new Reading.Measured(why.size(), 0, "count"),
                          new Limit.Most(from.value() - 1, "count"),
                          from.source(),
                          from.standing())),
                  List.of(
                      why.stream().collect(Collectors.joining("; ")),
                      entry.restoration() == ToothEntry.Restoration.CROWN
                          ? "the tooth carries a crown already"
                          : "a sound tooth pays for it with its enamel: another path or another"
                              + " abutment may spare it")));
        });
  }
}
