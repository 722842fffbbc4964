package rodwork.anatomy.teeth;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Where a crown can be, from a place on its biting surface, its usual size and its neighbours.
 *
 * <p>Measured in the arch frame as (u) how far off the middle a place is, 1 where the crown is
 * expected to end: an ellipse across, crown heights down.
 */
final class ToothReach {
  /** A neighbour bounds the width; with none the crown may be this times the usual one. */
  private static final double WIDEST = 1.15;

  /** Half of the depth and a little, since the point need not be in the middle. */
  private static final double DEPTH_SHARE = 0.62;

  /** How deep below its point a crown's middle is surely crown [mm]. */
  private static final double CORE_DEPTH_MM = 2;

  /** Share of width and depth that is surely crown. */
  private static final double CORE = 0.18;

  final int fdi;
  final double x;
  final double y;
  final double z;
  private final double alongX;
  private final double alongY;
  private final double before;
  private final double after;
  private final UsualCrown usual;

  private ToothReach(int fdi, double[] at, double[] along, double before, double after) {
    this.fdi = fdi;
    x = at[0];
    y = at[1];
    z = at[2];
    alongX = along[0];
    alongY = along[1];
    this.before = before;
    this.after = after;
    usual = UsualCrown.of(fdi);
  }

  /** The reach of each tooth, in the order of the row. */
  static List<ToothReach> of(Map<Integer, double[]> points) {
    List<Integer> row =
        points.keySet().stream()
            .sorted((a, b) -> UsualCrown.order(a) - UsualCrown.order(b))
            .toList();
    List<ToothReach> reaches = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      int fdi = row.get(i);
      double[] at = at(points, fdi);
      double[] a = at(points, row.get(Math.max(0, i - 1)));
      double[] b = at(points, row.get(Math.min(row.size() - 1, i + 1)));
      double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      double[] along =
          length > 1e-6
              ? new double[] {(b[0] - a[0]) / length, (b[1] - a[1]) / length}
              : new double[] {1, 0};
      double before = i == 0 ? widest(fdi) : share(fdi, row.get(i - 1), at, a);
      double after = i == row.size() - 1 ? widest(fdi) : share(fdi, row.get(i + 1), at, b);
      reaches.add(new ToothReach(fdi, at, along, before, after));
    }
    return reaches;
  }

  private static double[] at(Map<Integer, double[]> points, int fdi) {
    double[] at = points.get(fdi);
    if (at == null) {
      throw new IllegalArgumentException("no point of tooth " + fdi);
    }
    return at;
  }

  private static double widest(int fdi) {
    return WIDEST * UsualCrown.of(fdi).width();
  }

  /** Twice its share of the way to a neighbour, as their usual widths are. */
  private static double share(int fdi, int other, double[] at, double[] there) {
    double way = Math.hypot(at[0] - there[0], at[1] - there[1]);
    double width = UsualCrown.of(fdi).width();
    return Math.min(2 * way * width / (width + UsualCrown.of(other).width()), widest(fdi));
  }

  private double along(double px, double py) {
    return (px - x) * alongX + (py - y) * alongY;
  }

  private double across(double px, double py) {
    return (py - y) * alongX - (px - x) * alongY;
  }

  /** How far off a place is; 1 where the crown is expected to end. */
  double off(double px, double py, double pz) {
    double a = along(px, py);
    double half = Math.max(0.3, a < 0 ? before : after) / 2;
    double off = Math.hypot(a / half, across(px, py) / (usual.depth() * DEPTH_SHARE));
    return Math.max(off, (z - pz) / usual.height());
  }

  /** Whether a place is surely of this crown, of the places near its point. */
  boolean core(double px, double py, double pz) {
    double width = 2 * CORE * Math.max(0.3, Math.min(before, after));
    double depth = 2 * CORE * usual.depth() * (UsualCrown.isFront(fdi) ? 0.5 : 0.8);
    return z - pz < CORE_DEPTH_MM
        && Math.abs(z - pz) < 2 * CORE_DEPTH_MM
        && Math.hypot(along(px, py) / width, across(px, py) / depth) < 1;
  }

  double distance(double px, double py, double pz) {
    return Math.sqrt((px - x) * (px - x) + (py - y) * (py - y) + (pz - z) * (pz - z));
  }
}
