package rodwork.casework.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rodwork.geometry.Vec3;

/** The convex hull of points as seen in a view (Andrew's monotone chain). */
final class Hull {
  private Hull() {}

  static List<Vec3> of(List<Vec3> points, View view) {
    List<Vec3> sorted = new ArrayList<>(points);
    sorted.sort(
        Comparator.<Vec3>comparingDouble(p -> view.at(p)[0]).thenComparing(p -> view.at(p)[1]));
    List<Vec3> hull = half(sorted, view);
    hull.removeLast();
    hull.addAll(half(sorted.reversed(), view));
    hull.removeLast();
    return hull;
  }

  private static List<Vec3> half(List<Vec3> sorted, View view) {
    List<Vec3> half = new ArrayList<>();
    for (Vec3 p : sorted) {
      while (half.size() > 1 && !turnsLeft(half.get(half.size() - 2), half.getLast(), p, view)) {
        half.removeLast();
      }
      half.add(p);
    }
    return half;
  }

  private static boolean turnsLeft(Vec3 a, Vec3 b, Vec3 c, View view) {
    double[] p = view.at(a);
    double[] q = view.at(b);
    double[] r = view.at(c);
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) > 0;
  }

  /** Whether a point of the page lies within a closed outline. */
  static boolean contains(List<double[]> outline, double[] at) {
    boolean inside = false;
    for (int i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
      double[] a = outline.get(i);
      double[] b = outline.get(j);
      if (a[1] > at[1] != b[1] > at[1]
          && at[0] < (b[0] - a[0]) * (at[1] - a[1]) / (b[1] - a[1]) + a[0]) {
        inside = !inside;
      }
    }
    return inside;
  }

  /** The corner of an outline nearest to a point of the page. */
  static double[] nearest(List<double[]> outline, double[] at) {
    return outline.stream()
        .min(Comparator.comparingDouble(p -> Math.hypot(p[0] - at[0], p[1] - at[1])))
        .orElse(at);
  }
}
