package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.design.cut.ToothSide;
import rodwork.design.cut.WallMaker;
import rodwork.design.plan.Part;
import rodwork.design.preparation.Step.Kind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneSection;

/** Cuts guiding planes where none stands there that is high enough. */
final class PlaneCuts {
  /** A plane is tried this much lower at a time [mm]. */
  private static final double LOWER_MM = 0.1;

  private final StepBook book;

  PlaneCuts(StepBook book) {
    this.book = book;
  }

  void plane(Part.GuidingPlate plate) {
    Tooth tooth = book.tooth(plate.tooth());
    Threshold wanted = plate.plane().wantedHeight();
    double there = plate.plane().there().map(PlanePatch::heightMm).orElse(0.0);
    if (there >= wanted.value()) {
      return;
    }
    String side = StepBook.word(plate.side());
    Optional<PlaneReading> could = plate.plane().couldBe();
    if (could.isEmpty()) {
      book.refuse(tooth, Kind.GUIDING_PLANE, "the " + side + " surface has no room for a plane");
      return;
    }
    Vec3 outward = could.get().site().outward();
    ToothSide face = new ToothSide(book.arch.mesh(), tooth, outward, book.plan.axis());
    List<WallMaker.Ridge> ridges = new ArrayList<>();
    for (PlaneSection section : could.get().site().sections()) {
      Vec3 ridge = face.frame.local(section.ridge());
      ridges.add(new WallMaker.Ridge(ridge.x(), ridge.z()));
    }
    boolean freeEnd =
        book.dentition
            .spaceBeside(plate.tooth(), plate.side())
            .filter(s -> s.freeEnd())
            .isPresent();
    Threshold least =
        freeEnd ? book.rules.own().planeLeastFreeEnd() : book.rules.own().planeLeastBounded();
    Threshold most = book.enamelMost(plate.tooth());
    List<WallMaker.Upright> uprights = WallMaker.uprights(face, ridges);
    Optional<WallMaker.Made> whole =
        WallMaker.below(face, uprights, book.rules.planes().belowRidge().value(), wanted.value());
    double taken =
        whole
            .map(made -> book.enamel(new Applied(tooth, made.wall()), made.greatestMm()))
            .orElse(Double.NaN);
    Optional<PlaneCut> best =
        fitting(face, tooth, uprights, wanted.value(), least.value(), most.value(), true)
            .or(
                () ->
                    fitting(
                        face, tooth, uprights, wanted.value(), least.value(), most.value(), false));
    if (best.isEmpty()) {
      book.refuse(tooth, Kind.GUIDING_PLANE, why(side, whole, taken, least.value(), most.value()));
      return;
    }
    planeStep(plate, tooth, face, best.get(), taken, could.get());
  }

  private static String why(
      String side, Optional<WallMaker.Made> whole, double taken, double least, double most) {
    double height = whole.map(WallMaker.Made::heightMm).orElse(0.0);
    return height < least
        ? String.format(
            Locale.ROOT,
            "the %s surface shows %.1f mm of wall between ridge and gum: less than a plane of %.1f"
                + " mm",
            side,
            height,
            least)
        : String.format(
            Locale.ROOT,
            "a guiding plane on the %s surface would take %.2f mm of enamel; no place and height"
                + " down to %.1f mm stays within %.2f mm",
            side,
            taken,
            least,
            most);
  }

  /**
   * A plane that was found.
   *
   * @param belowMm how far below the ridge it begins
   */
  private record PlaneCut(WallMaker.Made made, double belowMm, double enamelMm) {}

  /**
   * The highest plane within the limit, as near to the ridge as it can be.
   *
   * @param even whether it shall be as high as it is tried all over its width; else it may run out
   *     at the gum, and its mean height counts
   */
  private Optional<PlaneCut> fitting(
      ToothSide face,
      Tooth tooth,
      List<WallMaker.Upright> uprights,
      double wanted,
      double least,
      double most,
      boolean even) {
    double first = book.rules.planes().belowRidge().value();
    double last = first + book.rules.own().planeStartLower().value();
    for (double h = wanted; h >= least - LOWER_MM / 2; h -= LOWER_MM) {
      for (double below = first; below <= last; below += LOWER_MM) {
        Optional<WallMaker.Made> made = WallMaker.below(face, uprights, below, h);
        if (made.isEmpty()
            || made.get().greatestMm() > most
            || made.get().heightMm() < (even ? h : least) - LOWER_MM / 2) {
          continue;
        }
        double enamel = book.enamel(new Applied(tooth, made.get().wall()), made.get().greatestMm());
        if (enamel <= most) {
          return Optional.of(new PlaneCut(made.get(), below, enamel));
        }
      }
    }
    return Optional.empty();
  }

  private void planeStep(
      Part.GuidingPlate plate,
      Tooth tooth,
      ToothSide face,
      PlaneCut best,
      double whole,
      PlaneReading could) {
    Threshold wanted = plate.plane().wantedHeight();
    String side = StepBook.word(plate.side());
    WallMaker.Made made = best.made();
    double first = book.rules.planes().belowRidge().value();
    List<String> cautions = new ArrayList<>();
    boolean lower = made.heightMm() < wanted.value() - LOWER_MM / 2;
    if (lower || best.belowMm() > first + LOWER_MM / 2) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "%s than wanted: %.1f mm from %.1f mm below the ridge would take %.2f mm",
              lower ? "lower" : "begins lower",
              wanted.value(),
              first,
              whole));
    }
    if (made.stepMm() > StepBook.LEAST_CUT_MM) {
      cautions.add(
          String.format(
              Locale.ROOT, "stands out by %.2f mm at its foot: round that edge", made.stepMm()));
    }
    Finding height =
        Finding.of(
            wanted.id(),
            "height of the prepared plane",
            StepBook.at(tooth, side, made.middle()),
            Reading.mm(made.heightMm(), book.rules.scanAccuracy().value()),
            new Limit.Least(wanted.value(), wanted.unit()),
            wanted.source(),
            wanted.standing());
    book.step(
        Kind.GUIDING_PLANE,
        tooth,
        plate.side(),
        String.format(
            Locale.ROOT,
            "guiding plane on the %s surface from %.1f mm below the marginal ridge, %.1f mm wide",
            side,
            best.belowMm(),
            could.site().widthMm()),
        made.middle(),
        made.heightMm(),
        new Applied(tooth, made.wall()),
        best.enamelMm(),
        face.frame,
        List.of(height),
        cautions);
  }
}
