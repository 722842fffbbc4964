package rodwork.design.plan;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rodwork.geometry.Vec3;

/**
 * The straps of a frame before and behind its opening, as wide as a calliper takes them.
 *
 * @param frontMm least width of the one in front
 * @param behindMm least width of the one behind
 */
record Straps(double frontMm, double behindMm) {

  /** Measures; empty where there is no opening. */
  static Optional<Straps> of(Ground ground, Part.MajorConnector frame) {
    return frame
        .opening()
        .map(
            opening -> {
              DoubleSummaryStatistics y =
                  opening.points().stream().mapToDouble(p -> ground.plan(p)[1]).summaryStatistics();
              List<Vec3> outer = frame.outline().points();
              return new Straps(
                  least(outer, opening, p -> ground.plan(p)[1] >= y.getMax()),
                  least(outer, opening, p -> ground.plan(p)[1] <= y.getMin()));
            });
  }

  private static double least(List<Vec3> outer, Line opening, Predicate<Vec3> there) {
    return outer.stream().filter(there).mapToDouble(opening::distanceMm).min().orElse(0);
  }
}
