package rodwork.design.abutment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
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
import rodwork.design.course.BarWay;
import rodwork.design.course.ClaspAction;
import rodwork.design.course.ClaspCourse;
import rodwork.design.course.CourseFinder;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.Survey;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneSites;

/** Judges the abutments of an arch: a pure function of arch, teeth, chart, survey and rules. */
public final class Abutments {
  /** Where exactly an arm begins is open to this [mm]. */
  private static final double LENGTH_MM = 0.5;

  private final Survey survey;
  private final Dentition dentition;
  private final AbutmentRules rules;
  private final Answers answers;
  private final TriangleTree tree;
  private final PlaneSites sites;
  private final VertexNormals normals;
  private final ToothFacts toothFacts;
  private final ClaspJudge judge;
  private final ToothSurface surface;

  private Abutments(
      Arch arch, Survey survey, Dentition dentition, AbutmentRules rules, Answers answers) {
    this.survey = survey;
    this.dentition = dentition;
    this.rules = rules;
    this.answers = answers;
    this.tree = TriangleTree.of(arch.mesh());
    this.sites = new PlaneSites(arch, tree, rules.planes());
    this.normals = PlanePatch.normals(arch.topology(), rules.planes());
    this.toothFacts =
        new ToothFacts(arch, dentition, SiteFinder.likelyAbutments(dentition), rules.limits());
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
   * @return from the patient's right to left
   */
  public static List<Abutment> of(
      Arch arch,
      Survey survey,
      Dentition dentition,
      SortedSet<ToothNumber> wanted,
      AbutmentRules rules,
      Answers answers,
      Watch watch) {
    Abutments all = new Abutments(arch, survey, dentition, rules, answers);
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
      GuidingPlane plane = plane(tooth, side, proximal);
      planes.add(plane);
      facts = proximalFacts(facts, plane);
    }
    GuidingPlane lingual = plane(tooth, Surface.LINGUAL, rules.planes().heightBounded());
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
    Map<AbutmentFacts.Reach, Reading> reaches = new HashMap<>();
    for (Family family : rules.clasps().families()) {
      for (AbutmentFacts.Spot spot : family.tips()) {
        AcrossThird tip = facts.across(spot);
        AbutmentFacts.Reach reach = new AbutmentFacts.Reach(family.id(), tip);
        ClaspCourse.Attempt attempt = finder.course(family, facts, tip);
        attempts.put(reach, attempt);
        reaches.put(reach, length(attempt));
      }
    }
    AbutmentJudgement judgement = judge.judge(answers.on(facts.withReaches(reaches)));
    Map<String, ClaspAction> actions = new HashMap<>();
    Map<String, String> noCourse = new HashMap<>();
    for (Judgement j : judgement.inOrder()) {
      if (j.answer() == Judgement.Answer.DOES_NOT_SERVE || j.tip().isEmpty()) {
        continue;
      }
      AbutmentFacts.Reach reach = new AbutmentFacts.Reach(j.family().id(), j.tip().get());
      ClaspCourse.Attempt attempt = attempts.get(reach);
      if (attempt != null && attempt.course().isPresent()) {
        actions.put(j.family().id(), action(attempt.course().get(), j.family(), tooth));
      } else if (attempt != null) {
        noCourse.put(j.family().id(), attempt.why());
      }
    }
    return new Abutment(tooth, side, space, planes, sections, judgement, actions, noCourse);
  }

  /** A length is known to the width of a tip. */
  private static Reading length(ClaspCourse.Attempt attempt) {
    return attempt
        .course()
        .<Reading>map(c -> Reading.mm(c.retentive().lengthMm(), LENGTH_MM))
        .orElseGet(() -> new Reading.NotKnown(attempt.why()));
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
        new Place(
            "tooth " + tooth.number().fdi() + ", " + family.name(),
            Optional.of(new Place.Spot(tip.x(), tip.y(), tip.z()))));
  }

  private AbutmentFacts proximalFacts(AbutmentFacts facts, GuidingPlane plane) {
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    Reading enamel =
        plane
            .couldBe()
            .<Reading>map(p -> Reading.mm(p.greatestMm(), accuracy))
            .orElseGet(() -> new Reading.NoRoom("the surface ends before a plane would"));
    AbutmentFacts with =
        facts.with(Fact.PLANE_HEIGHT, height(plane)).with(Fact.PLANE_ENAMEL, enamel);
    Optional<Vec3> there = plane.there().map(PlanePatch::place);
    Optional<Vec3> ridge = plane.couldBe().map(p -> p.site().place());
    return at(at(with, Fact.PLANE_HEIGHT, there.or(() -> ridge)), Fact.PLANE_ENAMEL, ridge);
  }

  private static AbutmentFacts at(AbutmentFacts facts, Fact fact, Optional<Vec3> point) {
    return point
        .map(
            p ->
                facts.at(
                    fact,
                    new Place(
                        "tooth " + facts.tooth().fdi(),
                        Optional.of(new Place.Spot(p.x(), p.y(), p.z())))))
        .orElse(facts);
  }

  /** A height is known to what turning the surface by the accuracy of the scan would change. */
  private Reading height(GuidingPlane plane) {
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    return Reading.mm(
        plane.there().map(PlanePatch::heightMm).orElse(0.0),
        accuracy / Math.sin(Math.toRadians(rules.planes().parallel().value())) / 2);
  }

  private GuidingPlane plane(Tooth tooth, Surface face, Threshold wanted) {
    Vec3 out = tooth.axes().outOf(face);
    Optional<PlanePatch> there =
        PlanePatch.of(survey, normals, tooth.trianglesOf(face), out, rules.planes());
    Optional<PlaneReading> couldBe =
        sites.site(tooth, face, wanted).flatMap(s -> s.read(survey.axis(), rules.planes()));
    return new GuidingPlane(face, wanted, there, couldBe);
  }
}
