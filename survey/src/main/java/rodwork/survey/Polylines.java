package rodwork.survey;

import java.util.List;
import rodwork.geometry.Vec3;

/** Lengths of polylines. */
final class Polylines {
  private Polylines() {}

  static double length(List<Vec3> points, boolean closed) {
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      sum += points.get(i).distance(points.get(i - 1));
    }
    if (closed && points.size() > 2) {
      sum += points.getFirst().distance(points.getLast());
    }
    return sum;
  }
}
