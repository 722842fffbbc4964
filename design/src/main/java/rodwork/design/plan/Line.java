package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * A curve on the cast. Immutable.
 *
 * @param points scan frame [mm]
 * @param closed whether the last point joins the first
 */
public record Line(List<Vec3> points, boolean closed) {
  public Line {
    points = List.copyOf(points);
  }

  public static Line open(List<Vec3> points) {
    return new Line(points, false);
  }

  public static Line closed(List<Vec3> points) {
    return new Line(points, true);
  }

  public double lengthMm() {
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      sum += points.get(i - 1).distance(points.get(i));
    }
    return closed && points.size() > 1 ? sum + points.getLast().distance(points.getFirst()) : sum;
  }

  /** Distance of a point from the nearest point of the curve [mm]; infinite for an empty one. */
  public double distanceMm(Vec3 point) {
    return points.isEmpty() ? Double.POSITIVE_INFINITY : point.distance(nearest(point));
  }

  /** The point of a curve that is not empty which lies nearest to a point. */
  public Vec3 nearest(Vec3 point) {
    Vec3 nearest = points.getFirst();
    int n = points.size();
    for (int i = 0; i < n; i++) {
      Vec3 a = points.get(i);
      Vec3 ab = i + 1 < n || closed ? points.get((i + 1) % n).minus(a) : Vec3.ZERO;
      double squared = ab.dot(ab);
      double t = squared > 0 ? Math.clamp(point.minus(a).dot(ab) / squared, 0, 1) : 0;
      Vec3 there = a.plus(ab.times(t));
      if (point.distance(there) < point.distance(nearest)) {
        nearest = there;
      }
    }
    return nearest;
  }

  /**
   * Least distance between two curves [mm], point of the one to nearest point of the other: exact
   * where they do not cross, to the spacing of their points where they do.
   */
  public double distanceMm(Line other) {
    double to = points.stream().mapToDouble(other::distanceMm).min().orElse(Double.NaN);
    double from = other.points.stream().mapToDouble(this::distanceMm).min().orElse(Double.NaN);
    return Math.min(to, from);
  }

  /** The point at a share of its length, from 0 to 1. */
  public Vec3 along(double share) {
    double wanted = share * Line.open(points).lengthMm();
    for (int i = 1; i < points.size(); i++) {
      double step = points.get(i - 1).distance(points.get(i));
      if (wanted <= step && step > 0) {
        return points.get(i - 1).plus(points.get(i).minus(points.get(i - 1)).times(wanted / step));
      }
      wanted -= step;
    }
    return points.getLast();
  }

  /** The same way walked from the other end. */
  public Line reversed() {
    return new Line(points.reversed(), closed);
  }

  /** One curve of several, end to end. */
  static Line loop(List<List<Vec3>> pieces) {
    List<Vec3> all = new ArrayList<>();
    pieces.forEach(all::addAll);
    return closed(all);
  }
}
