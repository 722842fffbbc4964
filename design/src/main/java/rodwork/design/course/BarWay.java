package rodwork.design.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.BarSection;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.survey.Survey;
import rodwork.survey.standoff.StandOffRules;

/**
 * The way of a bar: out of the base beside the tooth, along the gum at its clearance from the
 * margin, up across the margin below its tip, and free to the tip, the only place where it touches.
 */
public final class BarWay {
  /** The bar leaves the base this far beside the tooth [mm]. */
  private static final double BASE_MM = 3;

  private static final double STEP_MM = 0.6;

  private final Survey survey;
  private final TriangleTree tree;
  private final Tooth tooth;
  private final Surface near;
  private final boolean base;
  private final StandOffRules rules;
  private final Threshold relief;

  /**
   * For one abutment.
   *
   * @param tree over the whole cast
   * @param near the side that the base lies on
   * @param base whether a base lies there
   * @param relief how far a bar stands off the gum
   */
  public BarWay(
      Survey survey,
      TriangleTree tree,
      Tooth tooth,
      Surface near,
      boolean base,
      StandOffRules rules,
      Threshold relief) {
    this.survey = survey;
    this.tree = tree;
    this.tooth = tooth;
    this.near = near;
    this.base = base;
    this.rules = rules;
    this.relief = relief;
  }

  /**
   * A way.
   *
   * @param line from the base to the tip; empty: there is none
   * @param crossingDeg angle to the margin where it crosses [degrees]
   * @param why why there is none
   */
  record Way(List<Vec3> line, OptionalDouble crossingDeg, String why) {
    static Way none(String why) {
      return new Way(List.of(), OptionalDouble.empty(), why);
    }
  }

  Way to(AcrossThird third, Vec3 tip) {
    if (!base) {
      return Way.none("no base beside the tooth for a bar to come from");
    }
    double at = tooth.axes().toTooth(tip).x();
    Optional<BarSection> crossing = BarSection.at(survey, tree, tooth, third, 0, at, rules);
    if (crossing.isEmpty()) {
      return Way.none("the margin below the tip was not captured");
    }
    Optional<Vec3> turn = crossing.get().standOff().near().place();
    if (turn.isEmpty()) {
      return Way.none(
          crossing.get().standOff().near().total() instanceof Reading.NotKnown unknown
              ? unknown.why()
              : crossing.get().standOff().near().total().words());
    }
    List<Vec3> line = new ArrayList<>();
    line.add(tip);
    Vec3 margin = crossing.get().margin();
    line.add(off(margin));
    for (var p : crossing.get().standOff().line()) {
      if (p.fromMarginMm() > STEP_MM
          && p.fromMarginMm() < rules.near().value() - STEP_MM
          && line.getLast().distance(p.point()) > STEP_MM) {
        line.add(off(p.point()));
      }
    }
    line.add(off(turn.get()));
    double way = near == Surface.MESIAL ? STEP_MM : -STEP_MM;
    double end = tooth.size().mesiodistalMm() / 2;
    for (double x = at + way; Math.abs(x) < end && x * way > -end * STEP_MM; x += way) {
      BarSection.at(survey, tree, tooth, third, 0, x, rules)
          .flatMap(s -> s.standOff().near().place())
          .ifPresent(p -> line.add(off(p)));
    }
    Vec3 out = tooth.axes().outOf(near).across(survey.axis()).unit();
    Vec3 last = line.getLast();
    double gone = last.minus(tooth.axes().origin()).dot(out);
    for (double x = Math.max(gone, 0) + STEP_MM; x <= end + BASE_MM; x += STEP_MM) {
      Vec3 ahead = line.getLast().plus(out.times(STEP_MM));
      Optional<SurfacePoint> on = tree.closest(ahead, 2);
      if (on.isEmpty()) {
        break;
      }
      line.add(off(on.get().point()));
    }
    return new Way(line.reversed(), crossingDeg(third, at, margin), "");
  }

  /** Angle between the bar, which goes down beside the facial direction, and the margin. */
  private OptionalDouble crossingDeg(AcrossThird third, double at, Vec3 margin) {
    Optional<Vec3> left =
        BarSection.at(survey, tree, tooth, third, 0, at - 1, rules).map(BarSection::margin);
    Optional<Vec3> right =
        BarSection.at(survey, tree, tooth, third, 0, at + 1, rules).map(BarSection::margin);
    Optional<BarSection> here = BarSection.at(survey, tree, tooth, third, 0, at, rules);
    if (left.isEmpty() || right.isEmpty() || here.isEmpty()) {
      return OptionalDouble.empty();
    }
    Vec3 along = right.get().minus(left.get());
    Vec3 down =
        here.get().standOff().line().stream()
            .filter(p -> p.fromMarginMm() >= 1)
            .findFirst()
            .map(p -> p.point().minus(margin))
            .orElse(Vec3.ZERO);
    if (along.length() < 1e-6 || down.length() < 1e-6) {
      return OptionalDouble.empty();
    }
    double angle = along.angleDegTo(down);
    return OptionalDouble.of(Math.min(angle, 180 - angle));
  }

  /** A place on the gum moved out by the relief. */
  private Vec3 off(Vec3 point) {
    return tree.closest(point, 1)
        .map(
            q -> {
              Vec3 n = tree.mesh().doubleAreaNormal(q.triangle());
              return n.length() > 0 ? point.plus(n.unit().times(relief.value())) : point;
            })
        .orElse(point);
  }
}
