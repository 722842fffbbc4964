package rodwork.design.course;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;

/**
 * A place of the facial gingival margin, and which way the margin runs there.
 *
 * @param point scan frame [mm]
 * @param along unit direction of the margin, over a millimetre to both sides
 */
record MarginCrossing(Vec3 point, Vec3 along) {
  /** The margin's direction is told over so much to both sides [mm]: its curve shivers by less. */
  private static final double REACH_MM = 1.5;

  /** The place of the seen facial margin that is nearest to a tip. */
  static Optional<MarginCrossing> below(Tooth tooth, Vec3 tip) {
    GingivalMargin margin = tooth.margin();
    int count = margin.points().size();
    Vec3 best = null;
    int segment = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      int next = (i + 1) % count;
      if (!facial(tooth, i) || !facial(tooth, next)) {
        continue;
      }
      Vec3 a = margin.points().get(i);
      Vec3 way = margin.points().get(next).minus(a);
      double share = Math.clamp(tip.minus(a).dot(way) / Math.max(1e-12, way.dot(way)), 0, 1);
      Vec3 q = a.plus(way.times(share));
      if (q.distance(tip) < least) {
        least = q.distance(tip);
        best = q;
        segment = i;
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    Vec3 back = walk(margin, best, segment, -1);
    Vec3 ahead = walk(margin, best, (segment + 1) % count, 1);
    Vec3 along = ahead.minus(back);
    return along.length() < REACH_MM / 2
        ? Optional.empty()
        : Optional.of(new MarginCrossing(best, along.unit()));
  }

  /**
   * The angle at which a line, whose last point is a tip, crosses the facial margin [degrees, 0 to
   * 90]: of its way between a millimetre before the margin and a millimetre behind it.
   */
  static OptionalDouble angleDeg(Tooth tooth, List<Vec3> line) {
    int at = -1;
    double least = Double.POSITIVE_INFINITY;
    MarginCrossing nearest = null;
    for (int i = 1; i < line.size() - 1; i++) {
      Optional<MarginCrossing> there = below(tooth, line.get(i));
      if (there.isPresent() && there.get().point.distance(line.get(i)) < least) {
        least = there.get().point.distance(line.get(i));
        nearest = there.get();
        at = i;
      }
    }
    if (nearest == null || least > REACH_MM) {
      return OptionalDouble.empty();
    }
    Vec3 before = pointAt(line, at, -1);
    Vec3 behind = pointAt(line, at, 1);
    double angle = behind.minus(before).angleDegTo(nearest.along);
    return OptionalDouble.of(Math.min(angle, 180 - angle));
  }

  /** The point of a line a millimetre before or behind one of its points, or its end. */
  private static Vec3 pointAt(List<Vec3> line, int from, int way) {
    double left = 1;
    Vec3 here = line.get(from);
    for (int i = from + way; i >= 0 && i < line.size(); i += way) {
      double step = line.get(i).distance(here);
      if (step >= left) {
        return here.plus(line.get(i).minus(here).times(left / step));
      }
      left -= step;
      here = line.get(i);
    }
    return here;
  }

  private static boolean facial(Tooth tooth, int i) {
    GingivalMargin margin = tooth.margin();
    return margin.kinds().get(i) == GingivalMargin.Kind.SEEN
        && tooth.axes().toTooth(margin.points().get(i)).y() > 0;
  }

  private static Vec3 walk(GingivalMargin margin, Vec3 start, int first, int way) {
    int count = margin.points().size();
    double left = REACH_MM;
    Vec3 here = start;
    for (int i = 0; i < count; i++) {
      Vec3 next = margin.points().get(Math.floorMod(first + i * way, count));
      double step = next.distance(here);
      if (step >= left) {
        return here.plus(next.minus(here).times(left / step));
      }
      left -= step;
      here = next;
    }
    return here;
  }
}
