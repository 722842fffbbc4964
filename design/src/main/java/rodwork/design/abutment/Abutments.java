package rodwork.design.abutment;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.arm.MeshSurface;
import rodwork.design.arm.ToothSurface;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.AbutmentJudgement;
import rodwork.design.clasp.AbutmentMeasure;
import rodwork.design.clasp.BarSection;
import rodwork.design.clasp.ClaspJudge;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.clasp.WantedCut;
import rodwork.design.course.ArmShape;
import rodwork.design.course.BarWay;
import rodwork.design.course.ClaspAction;
import rodwork.design.course.ClaspCourse;
import rodwork.design.course.CourseFinder;
import rodwork.design.cut.LineLowering;
import rodwork.design.cut.PlaneFit;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.RodReading;
import rodwork.survey.Survey;
import rodwork.survey.WayDown;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneSites;

/** Judges the abutments of an arch: a pure function of arch, teeth, chart, survey and rules. */
public final class Abutments {
  /** A tip farther from the scan lies on nothing [mm]. */
  private static final double TIP_NEAR_MM = 1;

  /**
   * Names the retentive arm of a family in one row.
   *
   * @param side of the space
   */
  public record ArmKey(ToothNumber tooth, Surface side, String family) {}

  private final Survey survey;
  private final Dentition dentition;
  private final AbutmentRules rules;
  private final Answers answers;
  private final Map<ArmKey, ArmShape> shapes;
  private final TriangleTree tree;
  private final PlaneSites sites;
  private final VertexNormals normals;
  private final ToothFacts toothFacts;
  private final ClaspJudge judge;
  private final ToothSurface surface;

  private Abutments(
      Arch arch,
      Survey survey,
      Dentition dentition,
      AbutmentRules rules,
      Answers answers,
      Map<ArmKey, ArmShape> shapes,
      OpposingRoom opposing) {
    this.survey = survey;
    this.dentition = dentition;
    this.rules = rules;
    this.answers = answers;
    this.shapes = Map.copyOf(shapes);
    this.tree = TriangleTree.of(arch.mesh());
    this.sites = new PlaneSites(arch, tree, rules.planes());
    this.normals = PlanePatch.normals(arch.topology(), rules.planes());
    this.toothFacts =
        new ToothFacts(
            arch, dentition, SiteFinder.likelyAbutments(dentition), rules.limits(), opposing);
    this.judge = new ClaspJudge(rules.clasps());
    this.surface = new MeshSurface(tree, survey.surveyor().normals());
  }

  /**
   * Judges.
   *
   * @param survey of the arch, whole, at the chosen path
   * @param wanted teeth to judge; empty: those beside spaces, and on a side without a space the
   *     last premolar and the first molar
   * @param answers what a person said
   * @param shapes what a person made of retentive arms; the others lie as they are laid out
   * @param opposing the room to the other jaw
   * @return from the patient's right to left
   */
  public static List<Abutment> of(
      Arch arch,
      Survey survey,
      Dentition dentition,
      SortedSet<ToothNumber> wanted,
      AbutmentRules rules,
      Answers answers,
      Map<ArmKey, ArmShape> shapes,
      OpposingRoom opposing,
      Watch watch) {
    Abutments all = new Abutments(arch, survey, dentition, rules, answers, shapes, opposing);
    SortedSet<ToothNumber> teeth =
        wanted.isEmpty() ? new TreeSet<>(SiteFinder.likelyAbutments(dentition)) : wanted;
    List<Row> rows = new ArrayList<>();
    for (ToothNumber number : teeth) {
      all.dentition
          .tooth(number)
          .ifPresent(tooth -> all.sides(tooth).forEach(side -> rows.add(new Row(tooth, side))));
    }
    return rows.parallelStream()
        .map(
            row -> {
              watch.check();
              return all.judge(row.tooth, row.side);
            })
        .toList();
  }

  private record Row(Tooth tooth, Surface side) {}

  /** The sides with spaces; without one that of the embrasure that a clasp would cross. */
  private List<Surface> sides(Tooth tooth) {
    List<Surface> sides = new ArrayList<>();
    for (Surface side : List.of(Surface.MESIAL, Surface.DISTAL)) {
      if (dentition.spaceBeside(tooth.number(), side).isPresent()) {
        sides.add(side);
      }
    }
    if (sides.isEmpty()) {
      // Embrasure clasps lie between the last premolar and the first molar.
      boolean back = tooth.number().isMolar() && tooth.mesialNeighbour().isPresent();
      sides.add(back ? Surface.MESIAL : Surface.DISTAL);
    }
    return sides;
  }

  private Abutment judge(Tooth tooth, Surface side) {
    List<BarSection> sections = BarSection.of(survey, tree, tooth, rules.standOff());
    AbutmentFacts facts =
        AbutmentMeasure.of(
            survey,
            tooth,
            side,
            new AbutmentFacts.Levels(
                rules.standOff().near().value(), rules.standOff().far().value()),
            sections,
            rules.limits().clearOfMargin().value(),
            rules.limits().marginKnownTo().value());
    for (Map.Entry<Fact, Reading> one : toothFacts.of(tooth, side).entrySet()) {
      facts = facts.with(one.getKey(), one.getValue());
    }
    Optional<Space> space = dentition.spaceBeside(tooth.number(), side);
    List<GuidingPlane> planes = new ArrayList<>();
    Threshold proximal =
        space.filter(Space::freeEnd).isPresent()
            ? rules.planes().heightFreeEnd()
            : rules.planes().heightBounded();
    if (space.isPresent()) {
      GuidingPlane plane = plane(tooth, side, proximal, space.get().freeEnd());
      planes.add(plane);
      facts = proximalFacts(facts, plane);
    }
    GuidingPlane lingual = plane(tooth, Surface.LINGUAL, rules.planes().heightBounded(), false);
    planes.add(lingual);
    facts = facts.with(Fact.RECIPROCAL_HEIGHT, height(lingual));
    facts = at(facts, Fact.RECIPROCAL_HEIGHT, lingual.there().map(PlanePatch::place));
    CourseFinder finder =
        new CourseFinder(
            new CourseFinder.CrownBeltSource(tree.mesh(), survey.axis(), surface),
            tooth,
            new BarWay(
                survey,
                tree,
                tooth,
                side,
                space.isPresent(),
                rules.standOff(),
                rules.limits().barRelief()),
            rules.arms());
    Map<AbutmentFacts.Reach, ClaspCourse.Attempt> attempts = new HashMap<>();
    Map<AbutmentFacts.Reach, Map<Fact, Reading>> laid = new HashMap<>();
    for (Family family : rules.clasps().families()) {
      for (AbutmentFacts.Spot spot : family.tips()) {
        AcrossThird tip = facts.across(spot);
        AbutmentFacts.Reach reach = new AbutmentFacts.Reach(family.id(), tip);
        ArmShape shape =
            shapes.getOrDefault(new ArmKey(tooth.number(), side, family.id()), ArmShape.AS_LAID);
        ClaspCourse.Attempt attempt = finder.course(family, facts, tip, shape);
        attempts.put(reach, attempt);
        laid.put(reach, readings(tooth, attempt));
      }
    }
    cuts(tooth, answers.on(facts.withLaid(laid)), lingual)
        .forEach((reach, taken) -> laid.computeIfAbsent(reach, _ -> new HashMap<>()).putAll(taken));
    // Forces are worked out where nothing else rules a family out, and where a person spoke of its
    // arm: a choice stands, whatever the ledger says of it.
    Map<AbutmentFacts.Reach, ClaspAction> worked = new HashMap<>();
    AbutmentFacts told = answers.on(facts.withLaid(laid));
    for (Family family : rules.clasps().families()) {
      boolean spoken = shapes.containsKey(new ArmKey(tooth.number(), side, family.id()));
      List<AbutmentFacts.Reach> reaches =
          spoken
              ? family.tips().stream()
                  .map(spot -> new AbutmentFacts.Reach(family.id(), told.across(spot)))
                  .toList()
              : judge.open(family, told);
      for (AbutmentFacts.Reach reach : reaches) {
        ClaspCourse.Attempt attempt = attempts.get(reach);
        if (attempt != null && attempt.course().isPresent()) {
          ClaspAction action = action(attempt.course().get(), family, tooth);
          worked.put(reach, action);
          laid.computeIfAbsent(reach, _ -> new HashMap<>()).putAll(action.readings());
        }
      }
    }
    AbutmentJudgement judgement = judge.judge(answers.on(facts.withLaid(laid)));
    Map<String, ClaspCourse.Attempt> courses = new HashMap<>();
    Map<String, ClaspAction> actions = new HashMap<>();
    Map<String, String> noCourse = new HashMap<>();
    for (Judgement j : judgement.inOrder()) {
      AcrossThird tip = j.tip().orElseGet(() -> told.across(j.family().tips().getFirst()));
      AbutmentFacts.Reach reach = new AbutmentFacts.Reach(j.family().id(), tip);
      if (attempts.containsKey(reach)) {
        courses.put(j.family().id(), attempts.get(reach));
      }
      if (j.tip().isEmpty()) {
        continue;
      }
      ClaspAction action = worked.get(reach);
      ClaspCourse.Attempt attempt = attempts.get(reach);
      if (action != null) {
        actions.put(j.family().id(), action);
      } else if (attempt != null
          && attempt.course().isEmpty()
          && j.answer() != Judgement.Answer.DOES_NOT_SERVE) {
        noCourse.put(j.family().id(), attempt.why());
      }
    }
    return new Abutment(
        tooth, side, space, planes, sections, judgement, courses, actions, noCourse);
  }

  /** What cuts for arms would take: the very cuts that the list of preparations makes. */
  private Map<AbutmentFacts.Reach, Map<Fact, Reading>> cuts(
      Tooth tooth, AbutmentFacts facts, GuidingPlane lingual) {
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    Optional<PlaneFit> fit =
        lingual.couldBe().map(p -> PlaneFit.of(tree.mesh(), tooth, p.site(), survey.axis()));
    Map<AbutmentFacts.Reach, Map<Fact, Reading>> taken = new HashMap<>();
    Map<Cutting, Reading> known = new HashMap<>();
    for (WantedCut one : judge.wantedCuts(facts)) {
      if (one.enamel() == Fact.RECIPROCAL_ENAMEL) {
        if (one.site().surface() == Surface.LINGUAL) {
          taken
              .computeIfAbsent(one.reach(), _ -> new HashMap<>())
              .put(
                  one.enamel(),
                  fit.flatMap(f -> f.forArm(one.byMm(), rules.cuts()))
                      .<Reading>map(cut -> Reading.mm(cut.enamelMm(), accuracy))
                      .orElseGet(
                          () -> new Reading.NoRoom("the crown is too low for a plane of that")));
        }
        continue;
      }
      Reading enamel =
          known.computeIfAbsent(
              new Cutting(one.site(), one.byMm()),
              c ->
                  c.byMm <= 0
                      ? Reading.mm(0, 0)
                      : LineLowering.of(
                              tree.mesh(),
                              tooth,
                              c.site.surface(),
                              c.site.across(),
                              survey.axis(),
                              c.byMm)
                          .<Reading>map(cut -> Reading.mm(cut.enamelMm(), accuracy))
                          .orElseGet(
                              () -> new Reading.NoRoom("the crown ends before the lowered line")));
      taken.computeIfAbsent(one.reach(), _ -> new HashMap<>()).put(one.enamel(), enamel);
    }
    return taken;
  }

  private record Cutting(AbutmentFacts.Site site, double byMm) {}

  /** What a course tells of itself, or why there is none; a tip put elsewhere is read there. */
  private Map<Fact, Reading> readings(Tooth tooth, ClaspCourse.Attempt attempt) {
    Map<Fact, Reading> readings = new EnumMap<>(Fact.class);
    if (attempt.course().isEmpty()) {
      for (Fact fact : Fact.values()) {
        if (fact.ofArm()) {
          readings.put(fact, new Reading.NotKnown(attempt.why()));
        }
      }
      return readings;
    }
    ClaspCourse course = attempt.course().get();
    readings.putAll(course.readings());
    double deepest =
        course.rigidPart().stream()
            .mapToDouble(p -> survey.overhangAt(p).depthMm())
            .max()
            .orElse(0);
    readings.put(
        Fact.ARM_UNDERCUT, Reading.mm(deepest, survey.surveyor().rules().scanAccuracy().value()));
    if (course.shape().movesTip()) {
      tree.closest(course.retentive().end().point(), TIP_NEAR_MM)
          .ifPresent(on -> readings.putAll(tip(tooth, on)));
    }
    return readings;
  }

  private Map<Fact, Reading> tip(Tooth tooth, SurfacePoint on) {
    RodReading rod = survey.read(on.point(), on.triangle());
    WayDown down = survey.wayDown(on.point(), on.triangle(), tooth::has);
    double sure = rod.uncertaintyMm();
    Map<Fact, Reading> readings = new EnumMap<>(Fact.class);
    readings.put(Fact.TIP_UNDERCUT, Reading.mm(rod.overhang().depthMm(), sure));
    readings.put(
        Fact.TIP_AT_REFERENCE, known(rod.depthAtReferenceMm(), sure, Fact.TIP_AT_REFERENCE));
    readings.put(
        Fact.TIP_HEIGHT,
        new Reading.Measured(tooth.heightShare(on.point()), shareKnown(tooth), "1"));
    readings.put(Fact.TIP_TRAVEL, known(rod.belowSurveyLineMm(), sure, Fact.TIP_TRAVEL));
    readings.put(Fact.TIP_CONVERGENCE, known(rod.convergenceDeg(), 0, Fact.TIP_CONVERGENCE));
    readings.put(
        Fact.TIP_FROM_MARGIN,
        tooth.has(on.triangle())
            ? known(down.lengthMm(), rules.limits().marginKnownTo().value(), Fact.TIP_FROM_MARGIN)
            : Reading.mm(0, rules.limits().marginKnownTo().value()));
    return readings;
  }

  private double shareKnown(Tooth tooth) {
    return rules.limits().marginKnownTo().value() / tooth.size().facialHeightMm();
  }

  private static Reading known(double value, double uncertainty, Fact fact) {
    return Double.isNaN(value)
        ? new Reading.NotKnown("not read where the tip was put")
        : new Reading.Measured(value, uncertainty, fact.unit());
  }

  private ClaspAction action(ClaspCourse course, Family family, Tooth tooth) {
    Vec3 tip = course.retentive().end().point();
    return ClaspAction.of(
        course,
        rules.arms().material(family.material()),
        rules.arms(),
        surface,
        survey.axis(),
        rules.limits().encirclement(),
        Place.of(tooth.number(), family.name(), new Place.Spot(tip.x(), tip.y(), tip.z())));
  }

  private AbutmentFacts proximalFacts(AbutmentFacts facts, GuidingPlane plane) {
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    Reading enamel =
        plane
            .enamelMm()
            // A plane that was fitted within the limit is ordered so, not measured.
            .<Reading>map(taken -> Reading.mm(taken, plane.within().isPresent() ? 0 : accuracy))
            .orElseGet(
                () ->
                    new Reading.NoRoom(
                        "the surface shows less wall than the "
                            + plane.least().value()
                            + " mm of a plane"));
    AbutmentFacts with =
        facts.with(Fact.PLANE_HEIGHT, height(plane)).with(Fact.PLANE_ENAMEL, enamel);
    Optional<Vec3> there = plane.there().map(PlanePatch::place);
    Optional<Vec3> ridge = plane.couldBe().map(p -> p.site().place());
    return at(at(with, Fact.PLANE_HEIGHT, there.or(() -> ridge)), Fact.PLANE_ENAMEL, ridge);
  }

  private static AbutmentFacts at(AbutmentFacts facts, Fact fact, Optional<Vec3> point) {
    return point
        .map(p -> facts.at(fact, Place.of(facts.tooth(), "", new Place.Spot(p.x(), p.y(), p.z()))))
        .orElse(facts);
  }

  /** A height is known to what turning the surface by the accuracy of the scan would change. */
  private Reading height(GuidingPlane plane) {
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    return Reading.mm(
        plane.there().map(PlanePatch::heightMm).orElse(0.0),
        accuracy / Math.sin(Math.toRadians(rules.planes().parallel().value())) / 2);
  }

  private GuidingPlane plane(Tooth tooth, Surface face, Threshold wanted, boolean freeEnd) {
    Vec3 out = tooth.axes().outOf(face);
    Optional<PlanePatch> there =
        PlanePatch.of(survey, normals, tooth.trianglesOf(face), out, rules.planes());
    Optional<PlaneReading> couldBe =
        sites.site(tooth, face, wanted).flatMap(s -> s.read(survey.axis(), rules.planes()));
    Optional<PlaneFit> fit =
        couldBe.map(p -> PlaneFit.of(tree.mesh(), tooth, p.site(), survey.axis()));
    double first = rules.planes().belowRidge().value();
    Threshold least = rules.cuts().least(freeEnd);
    Threshold most = rules.cuts().enamel(tooth.number());
    return new GuidingPlane(
        face,
        wanted,
        there,
        couldBe,
        fit.flatMap(f -> f.at(first, wanted.value())),
        fit.flatMap(
            f ->
                f.within(
                    first,
                    first + rules.cuts().startLower().value(),
                    wanted.value(),
                    least.value(),
                    most.value())),
        least,
        most);
  }
}
