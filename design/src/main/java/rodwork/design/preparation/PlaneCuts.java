package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.cut.PlaneCut;
import rodwork.design.cut.PlaneFit;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.design.cut.WallMaker;
import rodwork.design.plan.Part;
import rodwork.design.preparation.Step.Kind;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;

/** Cuts guiding planes where none stands there that is high enough. */
final class PlaneCuts {
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
    Optional<PlaneCut> best = plate.plane().within();
    if (best.isEmpty()) {
      book.refuse(tooth, Kind.GUIDING_PLANE, why(side, plate.plane()));
      return;
    }
    planeStep(plate, tooth, best.get(), could.get());
  }

  private static String why(String side, GuidingPlane plane) {
    double height = plane.asWanted().map(cut -> cut.made().heightMm()).orElse(0.0);
    double least = plane.least().value();
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
            "a guiding plane on the %s surface would take %.2f mm off the tooth; no place and"
                + " height down to %.1f mm stays within %.2f mm",
            side,
            plane.asWanted().map(PlaneCut::enamelMm).orElse(Double.NaN),
            least,
            plane.most().value());
  }

  private void planeStep(Part.GuidingPlate plate, Tooth tooth, PlaneCut best, PlaneReading could) {
    Threshold wanted = plate.plane().wantedHeight();
    String side = StepBook.word(plate.side());
    WallMaker.Made made = best.made();
    double first = book.rules.planes().belowRidge().value();
    List<String> cautions = new ArrayList<>();
    boolean lower = made.heightMm() < wanted.value() - PlaneFit.LOWER_MM / 2;
    if (lower || best.belowMm() > first + PlaneFit.LOWER_MM / 2) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "%s than wanted: %.1f mm from %.1f mm below the ridge would take %.2f mm",
              lower ? "lower" : "begins lower",
              wanted.value(),
              first,
              plate.plane().asWanted().map(PlaneCut::enamelMm).orElse(Double.NaN)));
    }
    if (made.stepMm() > StepBook.LEAST_CUT_MM) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "the tooth still stands out by %.2f mm below it: round that edge",
              made.stepMm()));
    }
    Finding height =
        Finding.of(
            wanted.id(),
            "height of the prepared plane",
            StepBook.at(tooth, side, made.middle()),
            // The height that is ordered, not one that was measured.
            Reading.mm(made.heightMm(), 0),
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
        best.frame(),
        List.of(height),
        cautions);
  }
}
