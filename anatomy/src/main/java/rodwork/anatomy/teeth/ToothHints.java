package rodwork.anatomy.teeth;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rodwork.geometry.Vec3;

/**
 * What a person knows of the teeth of a cast.
 *
 * @param missing FDI numbers of the missing teeth
 * @param points one point on the occlusal side of each tooth, in the scan frame [mm]
 */
public record ToothHints(Set<Integer> missing, List<Point> points) {
  public static final ToothHints NONE = new ToothHints(Set.of(), List.of());

  /** A place on a tooth, in the scan frame [mm]. */
  public record Point(int fdi, Vec3 at) {
    public Point {
      if (!ToothLabels.isFdi(fdi)) {
        throw new IllegalArgumentException("no FDI number of a permanent tooth: " + fdi);
      }
      if (!at.isFinite()) {
        throw new IllegalArgumentException("the point of tooth " + fdi + " is not finite: " + at);
      }
    }
  }

  public ToothHints {
    missing = Set.copyOf(missing);
    points = List.copyOf(points);
    Set<Integer> seen = new HashSet<>();
    for (Point point : points) {
      if (!seen.add(point.fdi())) {
        throw new IllegalArgumentException("tooth " + point.fdi() + " has two points");
      }
      if (missing.contains(point.fdi())) {
        throw new IllegalArgumentException(
            "tooth " + point.fdi() + " has a point and is called missing");
      }
    }
  }
}
