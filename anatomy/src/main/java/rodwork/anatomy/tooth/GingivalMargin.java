package rodwork.anatomy.tooth;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * The gingival margin of one tooth: a closed smooth curve, the last point joins the first.
 *
 * <p>Seen against the tooth's axis it goes round once. Where a neighbour touches, the scan shows no
 * margin: there the curve runs straight from one papilla to the other, under the contact.
 *
 * @param points scan frame [mm]
 * @param kinds of each point
 */
public record GingivalMargin(List<Vec3> points, List<Kind> kinds) {
  /** What a point of the curve lies on. */
  public enum Kind {
    /** On the surface, between tooth and gum. */
    SEEN,
    /** Under a contact: not on the surface. */
    UNDER_CONTACT,
    /** On the rim of the scan: the margin itself was not captured. */
    SCAN_ENDS
  }

  public GingivalMargin {
    points = List.copyOf(points);
    kinds = List.copyOf(kinds);
    if (points.size() != kinds.size() || points.size() < 3) {
      throw new IllegalArgumentException(
          "a margin has three points or more, each of a kind: "
              + points.size()
              + " points, "
              + kinds.size()
              + " kinds");
    }
  }

  public double lengthMm() {
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      sum += points.get(i).distance(points.get((i + 1) % points.size()));
    }
    return sum;
  }

  /** The middle of the curve, by length [mm]. */
  public Vec3 middle() {
    Vec3 sum = Vec3.ZERO;
    double length = 0;
    for (int i = 0; i < points.size(); i++) {
      Vec3 next = points.get((i + 1) % points.size());
      double step = points.get(i).distance(next);
      sum = sum.plus(points.get(i).plus(next).times(step / 2));
      length += step;
    }
    return length > 0 ? sum.times(1 / length) : points.getFirst();
  }

  /** Share of its length that was seen [0 to 1]. */
  public double seenShare() {
    double seen = 0;
    for (int i = 0; i < points.size(); i++) {
      if (kinds.get(i) == Kind.SEEN) {
        seen += points.get(i).distance(points.get((i + 1) % points.size()));
      }
    }
    double all = lengthMm();
    return all > 0 ? seen / all : 0;
  }

  /**
   * Distance of a point from the nearest point of the curve that was seen [mm]; NaN if none was.
   */
  public double distanceMm(Vec3 point) {
    double least = Double.NaN;
    for (int i = 0; i < points.size(); i++) {
      int next = (i + 1) % points.size();
      if (kinds.get(i) == Kind.SEEN && kinds.get(next) == Kind.SEEN) {
        double d = distance(point, points.get(i), points.get(next));
        if (!(d >= least)) {
          least = d;
        }
      }
    }
    return least;
  }

  private static double distance(Vec3 p, Vec3 a, Vec3 b) {
    Vec3 ab = b.minus(a);
    double squared = ab.dot(ab);
    double t = squared > 0 ? Math.clamp(p.minus(a).dot(ab) / squared, 0, 1) : 0;
    return p.distance(a.plus(ab.times(t)));
  }
}
