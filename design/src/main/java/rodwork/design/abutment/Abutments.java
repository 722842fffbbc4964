package rodwork.design.abutment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.AbutmentMeasure;
import rodwork.design.clasp.BarSection;
import rodwork.design.clasp.ClaspJudge;
import rodwork.design.clasp.Fact;
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
  private final Survey survey;
  private final Dentition dentition;
  private final AbutmentRules rules;
  private final Answers answers;
  private final TriangleTree tree;
  private final PlaneSites sites;
  private final VertexNormals normals;
  private final ToothFacts toothFacts;
  private final ClaspJudge judge;

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
    List<Abutment> found = new ArrayList<>();
    for (ToothNumber number : teeth) {
      watch.check();
      Optional<Tooth> tooth = dentition.tooth(number);
      if (tooth.isPresent()) {
        all.sides(tooth.get()).forEach(side -> found.add(all.judge(tooth.get(), side)));
      }
    }
    return List.copyOf(found);
  }

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
    return new Abutment(tooth, side, space, planes, sections, judge.judge(answers.on(facts)));
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
