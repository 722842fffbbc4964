package rodwork.design.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.BarSection;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Threshold;
import rodwork.survey.SectionWalk;
import rodwork.survey.Survey;
import rodwork.survey.standoff.StandOffRules;

/**
 * The way of a bar: out of the base beside the tooth, along the gum at its clearance from the
 * margin, up across the margin at a right angle to it, and free to the tip, the only place where it
 * touches. It crosses where the margin is nearest to the tip: there the way to the tip goes on
 * straight.
 */
public final class BarWay {
  /** The bar leaves the base this far beside the tooth [mm]. */
  private static final double BASE_MM = 3;

  private static final double STEP_MM = 0.6;

  /** A margin point this far from the surface does not stand for it [mm]. */
  private static final double MARGIN_NEAR_MM = 0.7;

  /** How often the bends over the gum are made gentler. */
  private static final int EASINGS = 6;

  /** So many points before the tip cross the margin and stay where they are: about 1.8 mm. */
  private static final int CROSSING_POINTS = 4;

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

  /** A way shaped by hand; its crossing is read anew. */
  Way shaped(Way way, ArmShape shape) {
    if (way.line().isEmpty() || shape.pulls().isEmpty()) {
      return way;
    }
    List<Vec3> line = new ArrayList<>(shape.of(way.line(), p -> seated(p)));
    // The tip alone touches.
    Vec3 tip = line.getLast();
    line.set(line.size() - 1, nearest(tip));
    return new Way(line, MarginCrossing.angleDeg(tooth, line), "");
  }

  /** The place of the cast nearest to a point [mm]. */
  Vec3 nearest(Vec3 p) {
    return tree.closest(p).map(SurfacePoint::point).orElse(p);
  }

  private Vec3 seated(Vec3 p) {
    return tree.closest(p, 3).map(q -> off(q.point())).orElse(p);
  }

  Way to(AcrossThird third, Vec3 tip) {
    if (!base) {
      return Way.none("no base beside the tooth for a bar to come from");
    }
    Optional<MarginCrossing> crossing = MarginCrossing.below(tooth, tip);
    Optional<SurfacePoint> on = crossing.flatMap(c -> tree.closest(c.point(), MARGIN_NEAR_MM));
    if (on.isEmpty()) {
      return Way.none("the margin below the tip was not captured");
    }
    Vec3 tangent = crossing.get().along();
    List<Vec3> gum = gumBelow(on.get(), tangent, tip);
    double deep = lengthOf(on.get().point(), gum);
    if (deep < rules.near().value()) {
      return Way.none(
          String.format(
              Locale.ROOT,
              "the scan or the gum ends %.1f mm below the margin, and a bar turns %.0f mm below it",
              deep,
              rules.near().value()));
    }
    List<Vec3> line = new ArrayList<>();
    line.add(tip);
    line.add(off(on.get().point()));
    for (Vec3 p : gum) {
      if (line.getLast().distance(p) > STEP_MM) {
        line.add(off(p));
      }
    }
    double at = tooth.axes().toTooth(gum.getLast()).x();
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
      Optional<SurfacePoint> there = tree.closest(ahead, 2);
      if (there.isEmpty()) {
        break;
      }
      line.add(off(there.get().point()));
    }
    List<Vec3> drawn = eased(line.reversed());
    return new Way(drawn, MarginCrossing.angleDeg(tooth, drawn), "");
  }

  /**
   * The gum from the margin down at a right angle to it, as far as bars run below margins.
   *
   * @param along direction of the margin there
   */
  private List<Vec3> gumBelow(SurfacePoint margin, Vec3 along, Vec3 tip) {
    Vec3 away = margin.point().minus(tip).across(along);
    List<Vec3> gum = new ArrayList<>();
    double wanted = rules.near().value();
    new SectionWalk(survey.surveyor().topology(), margin.point(), along)
        .walk(
            margin.triangle(),
            away,
            (q, a, b, share, triangle, length) -> {
              if (survey.surveyor().surface().isBase(triangle)) {
                return false;
              }
              Vec3 before = gum.isEmpty() ? margin.point() : gum.getLast();
              double step = q.distance(before);
              double over = length - wanted;
              gum.add(over > 0 && step > 0 ? q.plus(before.minus(q).times(over / step)) : q);
              return length < wanted;
            });
    return gum;
  }

  private static double lengthOf(Vec3 start, List<Vec3> line) {
    double length = 0;
    Vec3 before = start;
    for (Vec3 p : line) {
      length += p.distance(before);
      before = p;
    }
    // A way cut to its length may fall short of it by rounding.
    return length + 1e-9;
  }

  /**
   * The bends of a bar made gentle: each point of the part over the gum moved towards the middle of
   * its neighbours and put back at its distance from the gum. Both ends and the crossing stay.
   */
  private List<Vec3> eased(List<Vec3> line) {
    List<Vec3> eased = new ArrayList<>(line);
    for (int turn = 0; turn < EASINGS; turn++) {
      List<Vec3> before = List.copyOf(eased);
      for (int i = 1; i < line.size() - 1 - CROSSING_POINTS; i++) {
        Vec3 middle = before.get(i - 1).plus(before.get(i + 1)).times(0.5);
        Vec3 moved = before.get(i).plus(middle).times(0.5);
        int at = i;
        tree.closest(moved, 2).ifPresent(q -> eased.set(at, off(q.point())));
      }
    }
    return eased;
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
