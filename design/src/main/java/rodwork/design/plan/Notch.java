package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/**
 * Notches of borders round frena: rounded, deepest at the frenum, and smooth at both ends.
 *
 * @param depthMm where it is deepest
 * @param widthMm from end to end along the border
 */
record Notch(Ground ground, double depthMm, double widthMm) {
  static Notch by(Ground ground, PlanRules rules) {
    return new Notch(
        ground, rules.tissue().notchDepth().value(), rules.tissue().notchWidth().value());
  }

  /**
   * The border with a notch.
   *
   * @param middle of the notch, on the border
   * @param towards the curve that the border draws back to
   * @param most share of the way there that it may draw back
   */
  List<Vec3> in(List<Vec3> border, Vec3 middle, Line towards, double most) {
    List<Vec3> notched = new ArrayList<>();
    for (Vec3 p : border) {
      double off = p.distance(middle) / widthMm;
      Vec3 to = towards.nearest(p);
      double way = p.distance(to);
      double back = off < 0.5 ? depthMm * Math.pow(Math.cos(Math.PI * off), 2) : 0;
      notched.add(
          back > 0 && way > 0
              ? ground.lay(p.plus(to.minus(p).times(Math.min(most, back / way)))).point()
              : p);
    }
    return notched;
  }

  /**
   * Where frena lie: one a place, but one between two neighbours that both have it.
   *
   * @param has whether the chart tells of one at a place
   */
  static List<List<ToothNumber>> frena(Jaw jaw, Predicate<ToothNumber> has) {
    List<List<ToothNumber>> frena = new ArrayList<>();
    Optional<ToothNumber> before = Optional.empty();
    for (ToothNumber tooth : ToothNumber.allOf(jaw).filter(has).toList()) {
      if (before.filter(b -> b.order() == tooth.order() - 1).isPresent()) {
        frena.set(frena.size() - 1, List.of(before.get(), tooth));
        before = Optional.empty();
      } else {
        frena.add(List.of(tooth));
        before = Optional.of(tooth);
      }
    }
    return frena;
  }

  static Vec3 mean(List<Vec3> points) {
    return points.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / points.size());
  }
}
