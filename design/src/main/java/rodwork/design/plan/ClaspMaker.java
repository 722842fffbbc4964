package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part.Approach;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.rules.Place;

/** Draws both arms of a clasp on its tooth. */
final class ClaspMaker {
  /** Arms begin at this share of half the width, inside the line angle. */
  private static final double ORIGIN = 0.78;

  /** A rigid arm lies in the middle third. */
  private static final double RIGID_SHARE = 0.5;

  private static final double ORIGIN_SHARE = 0.62;

  /** A gauge mark stands for the gauge of a family within this [mm]. */
  private static final double FITS_MM = 0.03;

  /** A bar crosses the margin upright and runs along the gum this far below it [mm]. */
  private static final double BAR_BELOW_MM = 4;

  private final Ground ground;

  ClaspMaker(Ground ground) {
    this.ground = ground;
  }

  /** How the retentive arm of a family runs. */
  static Approach approach(Family family) {
    return switch (family.id()) {
      case "i-bar", "t-bar", "modified-t-bar", "y-bar", "rpi" -> Approach.BAR;
      default -> Approach.CIRCUMFERENTIAL;
    };
  }

  Part.Clasp make(CrownBoard crown, Abutment abutment, Judgement judgement, boolean chosen) {
    Family family = judgement.family();
    Approach approach = approach(family);
    boolean facial = family.surface() != Surface.LINGUAL;
    Optional<Line> retentive =
        tip(abutment, judgement)
            .map(
                tip ->
                    approach == Approach.BAR
                        ? bar(crown, abutment.side(), tip, facial)
                        : around(crown, abutment, family, tip, facial));
    return new Part.Clasp(
        crown.tooth.number(),
        abutment.side(),
        judgement,
        approach,
        retentive,
        rigid(crown, abutment.side(), !facial),
        family.gauge().value(),
        chosen);
  }

  /** The gauge mark that the family would put its tip on. */
  static Optional<Vec3> tip(Abutment abutment, Judgement judgement) {
    AcrossThird across = judgement.tip().orElse(null);
    AbutmentFacts.Third third =
        across == null
            ? null
            : abutment
                .judgement()
                .facts()
                .thirds()
                .get(new AbutmentFacts.Site(judgement.family().surface(), across));
    if (third == null) {
      return Optional.empty();
    }
    return third.marks().stream()
        .filter(m -> Math.abs(m.gaugeMm() - judgement.family().gauge().value()) <= FITS_MM)
        .flatMap(m -> m.place().spot().stream())
        .map((Place.Spot s) -> new Vec3(s.x(), s.y(), s.z()))
        .findFirst();
  }

  private static int sign(Surface side) {
    return side == Surface.MESIAL ? 1 : -1;
  }

  private Line around(
      CrownBoard crown, Abutment abutment, Family family, Vec3 tip, boolean facial) {
    int e =
        switch (family.origin()) {
          case NEAR, MIDDLE -> sign(abutment.side());
          case FAR -> -sign(abutment.side());
          case MESIAL -> 1;
          case DISTAL -> -1;
        };
    Vec3 end = crown.tooth.axes().toTooth(tip);
    double from = e * ORIGIN * crown.halfWidth();
    double middle = (from + end.x()) / 2;
    double high = crown.heightAt(from, facial, ORIGIN_SHARE);
    double between = 0.7 * high + 0.3 * end.z();
    List<Vec3> points =
        new ArrayList<>(
            crown.curve(
                new double[] {from, middle, end.x()},
                new double[] {high, between, end.z()},
                facial));
    points.set(points.size() - 1, tip);
    return Line.open(points);
  }

  private Line bar(CrownBoard crown, Surface side, Vec3 tip, boolean facial) {
    Vec3 end = crown.tooth.axes().toTooth(tip);
    double margin = crown.heightAt(end.x(), facial, 0.0) - BAR_BELOW_MM;
    double away = sign(side) * 1.5 * crown.halfWidth();
    double[][] corners = {
      {away, margin},
      {0.6 * end.x() + 0.4 * away, margin},
      {end.x(), margin + 1},
      {end.x(), end.z()}
    };
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < corners.length; i++) {
      for (int j = 0; j < 8; j++) {
        double t = j / 8.0;
        points.add(
            seen(
                crown,
                corners[i][0] + t * (corners[i + 1][0] - corners[i][0]),
                corners[i][1] + t * (corners[i + 1][1] - corners[i][1]),
                facial));
      }
    }
    points.add(tip);
    return Line.open(points);
  }

  /** The place of the cast seen from facial or lingual; the nearest one where nothing is seen. */
  private Vec3 seen(CrownBoard crown, double mesial, double height, boolean facial) {
    double out = (facial ? 1 : -1) * (crown.halfDepth() + 3);
    Vec3 start = crown.tooth.axes().toScan(new Vec3(mesial, out, height));
    Vec3 in = crown.tooth.axes().facial().times(facial ? -1 : 1);
    return ground
        .tree
        .firstHit(start, in, 2 * crown.halfDepth() + 3)
        .map(SurfacePoint::point)
        .orElseGet(() -> ground.lay(start.plus(in.times(3))).point());
  }

  private static Line rigid(CrownBoard crown, Surface side, boolean facial) {
    double from = sign(side) * ORIGIN * crown.halfWidth();
    double to = -0.8 * from;
    return Line.open(
        crown.curve(
            new double[] {from, (from + to) / 2, to},
            new double[] {
              crown.heightAt(from, facial, RIGID_SHARE),
              crown.heightAt((from + to) / 2, facial, RIGID_SHARE),
              crown.heightAt(to, facial, RIGID_SHARE)
            },
            facial));
  }
}
