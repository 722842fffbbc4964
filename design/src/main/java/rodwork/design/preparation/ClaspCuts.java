package rodwork.design.preparation;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.cut.Cut;
import rodwork.design.cut.CutFrame;
import rodwork.design.cut.LineLowering;
import rodwork.design.cut.PlaneCut;
import rodwork.design.cut.PlaneFit;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.design.cut.ToothSide;
import rodwork.design.cut.WallMaker;
import rodwork.design.plan.Part;
import rodwork.design.preparation.Step.Kind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/** Cuts what a clasp wants first: survey lines, reciprocal surfaces, undercuts, embrasures. */
final class ClaspCuts {
  private final StepBook book;

  ClaspCuts(StepBook book) {
    this.book = book;
  }

  void clasp(Part.Clasp clasp, Abutment abutment) {
    Family family = clasp.judgement().family();
    Tooth tooth = abutment.tooth();
    int before = book.steps.size();
    List<Judgement.Preparation> preparations = clasp.judgement().preparations();
    boolean braced = false;
    for (Judgement.Preparation wanted : preparations) {
      if (fact(family, wanted).filter(f -> f == Fact.RECIPROCAL_HEIGHT).isPresent()) {
        braced = brace(abutment, wanted.amountMm());
      }
    }
    for (Judgement.Preparation wanted : preparations) {
      Optional<Fact> fact = fact(family, wanted);
      if (fact.isEmpty()) {
        deepen(clasp, abutment);
        continue;
      }
      AcrossThird origin = abutment.judgement().facts().across(family.origin());
      switch (fact.get()) {
        case ROOM_ABOVE_ORIGIN -> lower(tooth, family.surface(), origin, wanted.amountMm());
        case ROOM_ABOVE_MIDDLE ->
            lower(tooth, family.surface(), AcrossThird.MIDDLE, wanted.amountMm());
        case RECIPROCAL_HEIGHT -> {} // cut before the others
        case RECIPROCAL_UNDERCUT -> {
          if (!braced) {
            reduce(tooth, Surface.LINGUAL, wanted.amountMm());
          }
        }
        case FACIAL_ARM_UNDERCUT -> reduce(tooth, Surface.FACIAL, wanted.amountMm());
        case PLANE_HEIGHT, PLANE_ENAMEL -> {} // the plate asks for it
        case OCCLUSAL_ROOM -> embrasure(tooth, clasp.side(), wanted);
        default ->
            book.refuse(
                tooth, Kind.SURVEY_LINE, wanted.what() + ": no shape of cut is known for this");
      }
    }
    if (clasp.judgement().answer() == Judgement.Answer.NOT_DECIDED) {
      book.steps
          .subList(before, book.steps.size())
          .replaceAll(s -> s.minding("only once it is decided that the clasp serves"));
    }
  }

  private static Optional<Fact> fact(Family family, Judgement.Preparation wanted) {
    return family.clauses().stream()
        .filter(c -> c.id().equals(wanted.clause()))
        .map(c -> c.wants().fact())
        .findFirst();
  }

  /**
   * A plane for the arm that braces, from where it lies as far up as the tip travels. It takes the
   * undercut there too.
   *
   * @return whether it was cut
   */
  private boolean brace(Abutment abutment, double travelMm) {
    Tooth tooth = abutment.tooth();
    Optional<PlaneCut> cut =
        abutment.planes().stream()
            .filter(p -> p.face() == Surface.LINGUAL)
            .flatMap(p -> p.couldBe().stream())
            .findFirst()
            .flatMap(
                p ->
                    PlaneFit.of(book.arch.mesh(), tooth, p.site(), book.plan.axis())
                        .forArm(travelMm, book.rules.own().cuts()));
    if (cut.isEmpty() || cut.get().enamelMm() < StepBook.LEAST_CUT_MM) {
      return false;
    }
    Threshold most = book.enamelMost(tooth.number());
    if (cut.get().enamelMm() > most.value()) {
      book.refuse(
          tooth,
          Kind.GUIDING_PLANE,
          String.format(
              Locale.ROOT,
              "a plane of %.1f mm for the reciprocal arm: it would take %.2f mm of enamel, more than"
                  + " %.2f mm",
              travelMm,
              cut.get().enamelMm(),
              most.value()));
      return false;
    }
    WallMaker.Made made = cut.get().made();
    book.step(
        Kind.GUIDING_PLANE,
        tooth,
        Surface.LINGUAL,
        String.format(
            Locale.ROOT,
            "plane on the lingual surface for the reciprocal arm, %.1f mm high from where the arm"
                + " lies: it stays in touch while the tip bends",
            travelMm),
        made.middle(),
        made.heightMm(),
        new Applied(tooth, made.wall()),
        cut.get().enamelMm(),
        cut.get().frame(),
        List.of(),
        List.of());
    return true;
  }

  private void lower(Tooth tooth, Surface surface, AcrossThird third, double by) {
    String where = StepBook.word(third) + " third of the " + StepBook.word(surface) + " surface";
    if (by < StepBook.LEAST_CUT_MM) {
      return;
    }
    String what =
        String.format(Locale.ROOT, "lower the survey line by %.2f mm in the %s", by, where);
    LineLowering.of(book.arch.mesh(), tooth, surface, third, book.plan.axis(), by)
        .ifPresentOrElse(
            low -> wall(tooth, surface, low.side(), low.made(), low.enamelMm(), what),
            () -> endsBefore(tooth, what));
  }

  private void reduce(Tooth tooth, Surface surface, double by) {
    if (by < StepBook.LEAST_CUT_MM) {
      return;
    }
    String what =
        String.format(
            Locale.ROOT,
            "take back the %s bulge for the reciprocal arm: %.2f mm of undercut",
            StepBook.word(surface),
            by);
    ToothSide side =
        ToothSide.third(book.arch.mesh(), tooth, surface, AcrossThird.MIDDLE, book.plan.axis())
            .map(ToothSide.OfThird::side)
            .orElse(null);
    Optional<WallMaker.Made> made = Optional.empty();
    if (side != null) {
      // The arm lies along all of the surface, not along its middle third alone.
      double half = tooth.size().mesiodistalMm() / 3;
      made = WallMaker.reducing(side, -half, half, by, ToothSide.HIGHEST_MM);
    }
    if (side == null || made.isEmpty()) {
      endsBefore(tooth, what);
      return;
    }
    double enamel = book.enamel(new Applied(tooth, made.get().wall()), made.get().greatestMm());
    wall(tooth, surface, side, made.get(), enamel, what);
  }

  private void endsBefore(Tooth tooth, String what) {
    book.refuse(tooth, Kind.SURVEY_LINE, what + ": the crown ends before");
  }

  private void wall(
      Tooth tooth,
      Surface surface,
      ToothSide side,
      WallMaker.Made made,
      double enamel,
      String what) {
    Threshold most = book.enamelMost(tooth.number());
    if (enamel > most.value()) {
      book.refuse(
          tooth,
          Kind.SURVEY_LINE,
          String.format(
              Locale.ROOT,
              "%s: it would take %.2f mm of enamel, more than %.2f mm",
              what,
              enamel,
              most.value()));
      return;
    }
    book.step(
        Kind.SURVEY_LINE,
        tooth,
        surface,
        what,
        made.middle(),
        made.heightMm(),
        new Applied(tooth, made.wall()),
        enamel,
        side.frame,
        List.of(),
        enamel < StepBook.LEAST_CUT_MM
            ? List.of("less than a hand can cut: polish, then survey again")
            : List.of());
  }

  /** A depression where the judgement found the undercut that lacks least, clear of the margin. */
  private void deepen(Part.Clasp clasp, Abutment abutment) {
    Tooth tooth = abutment.tooth();
    Family family = clasp.judgement().family();
    AcrossThird across = clasp.judgement().tip().orElse(AcrossThird.MIDDLE);
    String where =
        StepBook.word(across) + " third of the " + StepBook.word(family.surface()) + " surface";
    AbutmentFacts.Third third =
        abutment.judgement().facts().thirds().get(new AbutmentFacts.Site(family.surface(), across));
    if (third == null || !(third.clear().depth() instanceof Reading.Measured there)) {
      book.refuse(tooth, Kind.UNDERCUT, "the " + where + " was not captured");
      return;
    }
    double clear = book.rules.tipFromMargin().value();
    Optional<Vec3> spot =
        third.clear().place().flatMap(Place::spot).map(p -> new Vec3(p.x(), p.y(), p.z()));
    if (spot.isEmpty()) {
      book.refuse(
          tooth,
          Kind.UNDERCUT,
          String.format(
              Locale.ROOT, "the %s has no undercut %.1f mm clear of the margin", where, clear));
      return;
    }
    double half = book.rules.own().dimpleHeight().value() / 2;
    double lacks = clasp.gaugeMm() - there.value();
    if (lacks < StepBook.LEAST_CUT_MM) {
      return;
    }
    Threshold most = family.deepening();
    if (lacks > most.value()) {
      book.refuse(
          tooth,
          Kind.UNDERCUT,
          String.format(
              Locale.ROOT,
              "the %s lacks %.2f mm of undercut %.1f mm clear of the margin; at most %.2f mm may"
                  + " be cut. Composite can add it; it wears faster than enamel",
              where,
              lacks,
              clear,
              most.value()));
      return;
    }
    ToothSide whole =
        new ToothSide(
            book.arch.mesh(), tooth, tooth.axes().outOf(family.surface()), book.plan.axis());
    ToothSide side = whole.squareAt(whole.frame.local(spot.get()).x());
    CutFrame frame = CutFrame.of(spot.get(), side.frame.out(), side.frame.axis());
    Applied applied =
        new Applied(
            tooth,
            new Cut.Dimple(
                frame, book.rules.own().dimpleLength().value() / 2, half, lacks, 2 * half));
    List<Finding> findings =
        List.of(
            Finding.of(
                most.id(),
                "enamel taken",
                StepBook.at(tooth, where, frame.origin()),
                Reading.mm(lacks, book.rules.scanAccuracy().value()),
                new Limit.Most(most.value(), most.unit()),
                most.source(),
                most.standing()));
    book.step(
        Kind.UNDERCUT,
        tooth,
        family.surface(),
        String.format(
            Locale.ROOT,
            "deepen the undercut in the %s by %.2f mm for the %.2f mm gauge, its deepest place at"
                + " least %.1f mm from the margin: a smooth depression %.1f by %.1f mm, or composite",
            where,
            lacks,
            clasp.gaugeMm(),
            clear,
            book.rules.own().dimpleLength().value(),
            book.rules.own().dimpleHeight().value()),
        frame.origin(),
        book.rules.own().dimpleHeight().value(),
        applied,
        lacks,
        frame,
        findings,
        List.of("composite loses retention about three times as fast as enamel"));
  }

  private void embrasure(Tooth tooth, Surface side, Judgement.Preparation wanted) {
    if (wanted.amountMm() < StepBook.LEAST_CUT_MM) {
      return;
    }
    book.steps.add(
        new Step(
            0,
            Kind.EMBRASURE,
            tooth.number(),
            side,
            String.format(
                Locale.ROOT,
                "open the %s embrasure by %.2f mm for the clasp and both rests, the contact kept",
                StepBook.word(side),
                wanted.amountMm()),
            tooth.centroid(),
            wanted.amountMm(),
            Double.NaN,
            Double.NaN,
            List.of(),
            List.of("look at the bite on both teeth first"),
            Optional.empty(),
            Optional.empty()));
  }
}
