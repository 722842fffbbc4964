package rodwork.design.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.cut.Cut;
import rodwork.design.cut.CutFrame;
import rodwork.design.cut.LineLowering;
import rodwork.design.cut.PlaneCut;
import rodwork.design.cut.PlaneFit;
import rodwork.design.cut.PlaneLimits;
import rodwork.design.cut.PreparedCast;
import rodwork.design.cut.ToothSide;
import rodwork.design.cut.WallMaker;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Line;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyLine;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSection;
import rodwork.survey.plane.PlaneSite;
import rodwork.survey.testing.BallTooth;

/** Cuts in a ball: what they take, and what a survey sees after them, are closed forms. */
class PreparerTest {
  private static final double R = BallTooth.RADIUS;
  private static final Arch ARCH = BallTooth.arch();
  private static final Dentition DENTITION = BallTooth.dentition(ARCH);
  private static final Tooth TOOTH = DENTITION.tooth(44).orElseThrow();

  /** Height of the equator above the origin of a side of the tooth. */
  private static double equator(ToothSide side) {
    return side.frame.local(new Vec3(0, 0, BallTooth.RISE)).z();
  }

  private static ToothSide side(Surface surface) {
    return new ToothSide(ARCH.mesh(), TOOTH, TOOTH.axes().outOf(surface), Vec3.Z);
  }

  private static Survey survey(Arch arch) {
    return Surveyor.of(arch, SurveyRules.SHIPPED).survey(Vec3.Z, Gauges.COMMON, Watch.NONE);
  }

  private static List<WallMaker.Ridge> ridges(ToothSide side, double overEquator) {
    double middle = side.frame.local(Vec3.ZERO).x();
    List<WallMaker.Ridge> ridges = new ArrayList<>();
    for (double s : new double[] {-1.2, -0.6, 0, 0.6, 1.2}) {
      ridges.add(new WallMaker.Ridge(middle + s, equator(side) + overEquator));
    }
    return ridges;
  }

  @Test
  void aPlaneIsTheLeastCuttingUprightLineOfEachSection() {
    ToothSide side = side(Surface.MESIAL);
    WallMaker.Made made =
        WallMaker.below(side, WallMaker.uprights(side, ridges(side, 1.5)), 0.5, 2).orElseThrow();
    Vec3 centre = side.frame.local(new Vec3(0, 0, BallTooth.RISE));
    double[] across = made.wall().across();
    for (int i = 0; i < across.length; i++) {
      double s = across[i] - centre.x();
      assertThat(made.wall().outward()[i] - centre.y())
          .isCloseTo(Math.sqrt(R * R - s * s - 1), within(0.01));
    }
    assertThat(made.heightMm()).isCloseTo(2, within(0.06));
    double enamel = R - Math.sqrt(R * R - 1);
    assertThat(made.greatestMm()).isCloseTo(enamel, within(0.01));
    assertThat(
            PreparedCast.taken(ARCH.mesh(), new PreparedCast.Applied(TOOTH, made.wall()))
                .greatestMm())
        .isCloseTo(enamel, within(0.02));
  }

  /**
   * On real arches 7 mm of "enamel" came from rays under the margin of one side that met the far
   * side from within.
   */
  @Test
  void aSideEndsAtItsOwnMarginWhereTheOtherSideReachesLower() {
    double slope = 0.25;
    Tooth tooth = BallTooth.dentitionCutAslant(ARCH, slope).tooth(44).orElseThrow();
    ToothSide high = new ToothSide(ARCH.mesh(), tooth, Vec3.X, Vec3.Z);
    double middle = high.frame.local(Vec3.ZERO).x();
    ToothSide.Line line = high.line(middle, ToothSide.HIGHEST_MM);
    // Where the slanting plane cuts the ball: z = slope (R + x), x² + (z − rise)² = R².
    double z = 0;
    for (int i = 0; i < 100; i++) {
      double over = z - BallTooth.RISE;
      z = slope * (R + Math.sqrt(R * R - over * over));
    }
    assertThat(high.frame.scan(0, 0, line.height().getFirst()).z()).isCloseTo(z, within(0.1));
    for (double out : line.out()) {
      assertThat(high.frame.scan(0, out, 0).x()).isPositive();
    }
  }

  @Test
  void aSurveyOfThePreparedCastFindsThePlaneParallelWithinTheRule() {
    ToothSide side = side(Surface.MESIAL);
    WallMaker.Made made =
        WallMaker.below(side, WallMaker.uprights(side, ridges(side, 1.5)), 0.5, 2).orElseThrow();
    Arch prepared = PreparedCast.of(ARCH, List.of(new PreparedCast.Applied(TOOTH, made.wall())));
    double before = patch(ARCH).map(PlanePatch::heightMm).orElse(0.0);
    PlanePatch after = patch(prepared).orElseThrow();
    // A ball is parallel within 3° over R sin 3° to each side of its equator.
    assertThat(before).isLessThan(2 * R * Math.sin(Math.toRadians(3)) + 0.1);
    // Normals fitted over 0.5 mm lose a plane for up to 0.35 mm at each of its edges.
    assertThat(after.heightMm()).isBetween(2 - 2 * 0.35, 2.1);
    assertThat(Math.abs(after.angleDeg())).isLessThan(PlaneRules.SHIPPED.parallel().value() / 2);
    assertThat(after.widthMm()).isGreaterThan(2.2);
    onTheWall(prepared, side, equator(side) - 0.9, equator(side) + 0.9);
  }

  /** Without any fit: vertices of a wall have no undercut, and stand upright over each other. */
  private static void onTheWall(Arch prepared, ToothSide side, double low, double high) {
    Survey survey = survey(prepared);
    double middle = side.frame.local(Vec3.ZERO).x();
    List<Double> out = new ArrayList<>();
    for (int t : TOOTH.copyOfTriangles()) {
      int v = prepared.mesh().corner(t, 0);
      Vec3 q = side.frame.local(prepared.mesh().vertex(v));
      if (Math.abs(q.x() - middle) < 0.1 && q.y() > 0 && q.z() > low && q.z() < high) {
        assertThat(survey.depth(v)).isLessThan(PlaneRules.SHIPPED.divergence().value());
        out.add(q.y());
      }
    }
    assertThat(out).hasSizeGreaterThan(20);
    assertThat(Collections.max(out) - Collections.min(out)).isLessThan(0.01);
  }

  private static Optional<PlanePatch> patch(Arch arch) {
    return PlanePatch.of(
        survey(arch),
        PlanePatch.normals(arch.topology(), PlaneRules.SHIPPED),
        TOOTH.trianglesOf(Surface.MESIAL),
        TOOTH.axes().mesial(),
        PlaneRules.SHIPPED);
  }

  @Test
  void aSurveyLineComesToLieAsMuchLowerAsWasAskedFor() {
    ToothSide side = side(Surface.FACIAL);
    double by = 0.8;
    double middle = side.frame.local(Vec3.ZERO).x();
    WallMaker.Made made =
        WallMaker.lowering(side, middle - 1, middle + 1, by, ToothSide.HIGHEST_MM).orElseThrow();
    assertThat(made.greatestMm()).isCloseTo(R - Math.sqrt(R * R - by * by), within(0.01));
    Arch prepared = PreparedCast.of(ARCH, List.of(new PreparedCast.Applied(TOOTH, made.wall())));
    assertThat(lowest(ARCH, side, middle)).isCloseTo(BallTooth.RISE, within(0.05));
    // Normals of the survey are fitted too: its line is found up to 0.35 mm above the edge itself.
    assertThat(lowest(prepared, side, middle))
        .isBetween(BallTooth.RISE - by - 0.05, BallTooth.RISE - by + 0.35);
    onTheWall(prepared, side, equator(side) - by + 0.05, equator(side));
  }

  /** The lowest height at which a survey line or an edge of a band crosses the middle. */
  private static double lowest(Arch arch, ToothSide side, double middle) {
    double lowest = Double.POSITIVE_INFINITY;
    for (SurveyLine line : survey(arch).lines()) {
      for (Vec3 p : line.points()) {
        Vec3 q = side.frame.local(p);
        if (Math.abs(q.x() - middle) < 0.3 && q.y() > 0) {
          lowest = Math.min(lowest, p.z());
        }
      }
    }
    return lowest;
  }

  @Test
  void aDepressionAddsItsDepthToTheUndercut() {
    ToothSide side = side(Surface.FACIAL);
    double middle = side.frame.local(Vec3.ZERO).x();
    double height = equator(side) - 1;
    Vec3 place = side.frame.scan(middle, side.out(middle, height).orElseThrow(), height);
    Cut cut = new Cut.Dimple(CutFrame.of(place, side.frame.out(), Vec3.Z), 2, 1, 0.15, 2);
    Arch prepared = PreparedCast.of(ARCH, List.of(new PreparedCast.Applied(TOOTH, cut)));
    int v = nearest(ARCH.mesh(), place);
    assertThat(survey(ARCH).depth(v)).isCloseTo(R - Math.sqrt(R * R - 1), within(0.02));
    assertThat(survey(prepared).depth(v) - survey(ARCH).depth(v)).isCloseTo(0.15, within(0.01));
  }

  private static int nearest(TriangleMesh mesh, Vec3 place) {
    int best = 0;
    for (int v = 1; v < mesh.vertexCount(); v++) {
      best = mesh.vertex(v).distance(place) < mesh.vertex(best).distance(place) ? v : best;
    }
    return best;
  }

  @Test
  void aSeatIsAsDeepAsItSaysAndTakesNothingBesideIt() {
    Vec3 top = new Vec3(0, 0, BallTooth.RISE + R);
    PreparedCast.Applied seat =
        new PreparedCast.Applied(
            TOOTH, new Cut.Seat(top, Vec3.Z.times(-1), Vec3.ZERO, 1.25, 1.25, 1.5, 0));
    assertThat(PreparedCast.taken(ARCH.mesh(), seat).greatestMm()).isCloseTo(1.5, within(1e-9));
    TriangleMesh after = PreparedCast.mesh(ARCH.mesh(), List.of(seat));
    for (int v = 0; v < after.vertexCount(); v++) {
      Vec3 p = ARCH.mesh().vertex(v);
      if (Math.hypot(p.x(), p.y()) > 1.5) {
        assertThat(after.vertex(v)).isEqualTo(p);
      }
    }
  }

  /**
   * A third ends where its surface does, not round the corner of the tooth: on a ball a line
   * lowered in any third takes what it takes in the middle.
   */
  @Test
  void aLineLoweredBesideTheCornerTakesNoMoreThanInTheMiddle() {
    for (AcrossThird third : AcrossThird.values()) {
      LineLowering low =
          LineLowering.of(ARCH.mesh(), TOOTH, Surface.FACIAL, third, Vec3.Z, 1).orElseThrow();
      ToothSide.OfThird of =
          ToothSide.third(ARCH.mesh(), TOOTH, Surface.FACIAL, third, Vec3.Z).orElseThrow();
      double centre = of.side().frame.local(Vec3.ZERO).x();
      double most = Math.max(Math.abs(of.from() - centre), Math.abs(of.to() - centre));
      double equator = Math.sqrt(R * R - most * most);
      assertThat(low.made().greatestMm())
          .as("%s", third)
          .isBetween(
              R - Math.sqrt(R * R - 1) - 0.02, equator - Math.sqrt(equator * equator - 1) + 0.02);
      assertThat(most).as("%s is no wider than a third", third).isLessThan(R * 0.45);
    }
  }

  /**
   * From where the arm lies upwards all is upright as far as asked, over two thirds of the side.
   */
  @Test
  void aPlaneForAnArmIsUprightFromTheArmAsFarAsAsked() {
    ToothSide side = side(Surface.LINGUAL);
    double middle = side.frame.local(Vec3.ZERO).x();
    double out = side.frame.local(new Vec3(0, 0, BallTooth.RISE)).y();
    List<Vec3> ridgeLine = new ArrayList<>();
    for (double h = 2.5; h > -2.4; h -= 0.1) {
      ridgeLine.add(side.frame.scan(middle, out + Math.sqrt(R * R - h * h), equator(side) + h));
    }
    Threshold wanted = Threshold.own("plane-height-bounded", 3, "mm", "test");
    PlaneSite site =
        new PlaneSite(
            44,
            Surface.LINGUAL,
            side.frame.out(),
            wanted,
            2,
            List.of(new PlaneSection(ridgeLine, 0)));
    double height = 1.2;
    PlaneCut cut =
        PlaneFit.of(ARCH.mesh(), TOOTH, site, Vec3.Z).forArm(height, limits(0.5)).orElseThrow();
    assertThat(cut.made().heightMm()).isCloseTo(height, within(0.06));
    Arch after = PreparedCast.of(ARCH, List.of(new PreparedCast.Applied(TOOTH, cut.made().wall())));
    double[] across = cut.made().wall().across();
    assertThat(across[across.length - 1] - across[0])
        .isCloseTo(2 * TOOTH.size().mesiodistalMm() / 3, within(0.1));
    double foot = cut.made().wall().foot()[across.length / 2];
    ToothSide prepared =
        new ToothSide(after.mesh(), TOOTH, TOOTH.axes().outOf(Surface.LINGUAL), Vec3.Z);
    ToothSide.Line line = prepared.line(middle, ToothSide.HIGHEST_MM);
    double wall = line.at(foot + height / 2);
    assertThat(line.at(foot + 0.1)).isCloseTo(wall, within(0.03));
    assertThat(line.at(foot + height - 0.1)).isCloseTo(wall, within(0.03));
  }

  /** Handbook 4.6 and 4.7: deepest in the middle, higher at the ridge, less than a right angle. */
  @Test
  void theFloorOfASeatRisesToTheRidge() {
    Vec3 top = new Vec3(0, 0, BallTooth.RISE + R);
    Cut.Seat seat = new Cut.Seat(top, Vec3.Z.times(-1), Vec3.X, 1.5, 1.25, 1.5, 0.5);
    assertThat(seat.after(top).z()).isCloseTo(top.z() - 1.5, within(1e-12));
    for (double along : new double[] {0.3, 0.75, 1.5}) {
      Vec3 on = top.plus(new Vec3(along, 0, 0));
      assertThat(seat.after(on).z()).isCloseTo(top.z() - 1.5 + 0.5 * along / 1.5, within(1e-12));
    }
    double enclosed = Math.toDegrees(Math.acos(-seat.floor().dot(Vec3.Z)));
    assertThat(enclosed).isCloseTo(90 - Math.toDegrees(Math.atan2(0.5, 1.5)), within(1e-9));
  }

  /** A plane over the equator ends where the tooth still widens: it runs out, without a ledge. */
  @Test
  void aPlaneLeavesNoLedgeAtItsFoot() {
    ToothSide side = side(Surface.MESIAL);
    WallMaker.Made made =
        WallMaker.below(side, WallMaker.uprights(side, ridges(side, 2.5)), 0.5, 1).orElseThrow();
    double foot = equator(side) + 1;
    double middle = side.frame.local(Vec3.ZERO).x();
    double wall = Math.sqrt(R * R - 4);
    assertThat(Math.sqrt(R * R - 1) - wall).as("a ledge of this was left").isGreaterThan(0.25);
    assertThat(made.stepMm()).isZero();
    Arch cut = PreparedCast.of(ARCH, List.of(new PreparedCast.Applied(TOOTH, made.wall())));
    int seen = 0;
    for (int v = 0; v < cut.mesh().vertexCount(); v++) {
      Vec3 q = side.frame.local(cut.mesh().vertex(v));
      if (Math.abs(q.x() - middle) < 0.2 && q.y() > 0 && q.z() < foot && q.z() > foot - 1) {
        double centre = side.frame.local(new Vec3(0, 0, BallTooth.RISE)).y();
        assertThat(q.y() - centre).isLessThan(wall + foot - q.z() + 0.02);
        seen++;
      }
    }
    assertThat(seen).isGreaterThan(3);
  }

  /** Whatever the limit, no plane or line takes more than it; what cannot be had is told. */
  @Test
  void noCutExceedsItsLimitInSilence() {
    int cut = 0;
    int refusals = 0;
    for (double most : new double[] {0.05, 0.1, 0.2, 0.3, 0.5, 0.8}) {
      PreparationRules rules = rules(most);
      MouthPreparation list =
          Preparer.of(
              ARCH,
              DENTITION,
              List.of(),
              plan(3, limits(most)),
              new Preparer.Rules(
                  rules,
                  PlaneRules.SHIPPED,
                  Threshold.own("tip-from-margin-least", 1, "mm", "test"),
                  Threshold.own("scan-accuracy", 0.03, "mm", "test")));
      assertThat(list.steps().size() + list.refused().size()).isEqualTo(2);
      for (Step step : list.steps()) {
        PreparedCast.Taken taken = PreparedCast.taken(ARCH.mesh(), step.cut().orElseThrow());
        assertThat(taken.greatestMm()).isLessThanOrEqualTo(step.amountMm() + 1e-9);
        if (step.kind() == Step.Kind.GUIDING_PLANE) {
          cut++;
          assertThat(step.amountMm()).isLessThanOrEqualTo(most);
          // The window begins 1 mm above the equator and reaches as far down as the enamel allows.
          // It takes most at its ends, 1 mm from the middle.
          double end = Math.sqrt(R * R - 1);
          double foot = Math.min(2, Math.sqrt(end * end - (end - most) * (end - most)));
          assertThat(step.heightMm()).isBetween(1 + foot - 0.16, 1 + foot + 0.01);
          assertThat(step.heightMm() < 2.95).isEqualTo(saysLower(step));
        } else {
          assertThat(step.findings())
              .anyMatch(f -> f.rule().equals("seat-enamel") && f.verdict() == Verdict.NOT_MET);
          assertThat(step.cautions()).isNotEmpty();
        }
      }
      refusals += list.refused().size();
      list.refused().forEach(r -> assertThat(r.why()).contains(String.format("%.2f mm", most)));
    }
    assertThat(cut).isEqualTo(4);
    assertThat(refusals).isEqualTo(2);
  }

  private static boolean saysLower(Step step) {
    return step.cautions().stream().anyMatch(c -> c.startsWith("lower than wanted"));
  }

  private static PreparationRules rules(double most) {
    return new PreparationRules(
        limits(most),
        Threshold.own("enamel-warn", 0.2, "mm", "test"),
        Threshold.own("dimple-length", 4, "mm", "test"),
        Threshold.own("dimple-height", 2, "mm", "test"),
        Threshold.own("seat-enamel", 0.93, "mm", "test"),
        Threshold.own("cingulum-rest-depth", 1, "mm", "test"),
        Threshold.own("incisal-rest-depth", 1.5, "mm", "test"),
        Threshold.own("rest-floor-rise", 0.5, "mm", "test"),
        Threshold.own("rest-floor-angle-most", 90, "degrees", "test"),
        Threshold.own("surveyed-crown-from", 2, "1", "test"));
  }

  private static PlaneLimits limits(double most) {
    return new PlaneLimits(
        Threshold.own("enamel-most-front", most, "mm", "test"),
        Threshold.own("enamel-most-back", most, "mm", "test"),
        Threshold.own("prepared-plane-least-bounded", 2, "mm", "test"),
        Threshold.own("prepared-plane-least-free-end", 2, "mm", "test"),
        Threshold.own("reciprocal-arm-height", 0.5, "1", "test"),
        Threshold.own("reciprocal-arm-lowest", 0.35, "1", "test"),
        Threshold.own("plane-start-lower-most", 1.5, "mm", "test"));
  }

  /** One plate to mesial, with a ridge 1.5 mm over the equator, and a rest on the top. */
  private static Plan plan(double wantedMm, PlaneLimits limits) {
    Threshold wanted = Threshold.own("plane-height-bounded", wantedMm, "mm", "test");
    Vec3 out = TOOTH.axes().mesial().across(Vec3.Z).unit();
    Vec3 across = Vec3.Z.cross(out);
    List<PlaneSection> sections = new ArrayList<>();
    for (double s : new double[] {-1, -0.5, 0, 0.5, 1}) {
      List<Vec3> line = new ArrayList<>();
      for (double h = 1.5; h > -2.4; h -= 0.1) {
        double t = Math.sqrt(R * R - s * s - h * h);
        line.add(out.times(t).plus(across.times(s)).plus(new Vec3(0, 0, BallTooth.RISE + h)));
      }
      sections.add(new PlaneSection(line, 0));
    }
    PlaneSite site = new PlaneSite(44, Surface.MESIAL, out, wanted, 2, sections);
    PlaneFit fit = PlaneFit.of(ARCH.mesh(), TOOTH, site, Vec3.Z);
    double first = PlaneRules.SHIPPED.belowRidge().value();
    GuidingPlane plane =
        new GuidingPlane(
            Surface.MESIAL,
            wanted,
            Optional.empty(),
            site.read(Vec3.Z, PlaneRules.SHIPPED),
            fit.at(first, wantedMm),
            fit.within(
                first,
                first + limits.startLower().value(),
                wantedMm,
                limits.leastBounded().value(),
                limits.enamelBack().value()),
            limits.leastBounded(),
            limits.enamelBack());
    Vec3 top = new Vec3(0, 0, BallTooth.RISE + R);
    Line line = Line.open(List.of(top, top.plus(out)));
    return new Plan(
        Jaw.LOWER,
        "class III",
        Vec3.Z,
        Choices.NONE,
        List.of(
            new Part.Rest(
                TOOTH.number(),
                Part.RestKind.OCCLUSAL,
                Surface.MESIAL,
                line,
                top,
                2.5,
                2.5,
                1.5,
                "test")),
        List.of(new Part.GuidingPlate(TOOTH.number(), Surface.MESIAL, line, plane)),
        List.of(),
        List.of(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }
}
