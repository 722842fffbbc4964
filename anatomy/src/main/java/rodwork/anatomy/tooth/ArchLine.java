package rodwork.anatomy.tooth;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/**
 * The line that the crowns stand on, seen from above: which way is out, and which to mesial, at
 * each tooth.
 *
 * <p>At each crown a parabola is fitted to the crowns about it, with weights that fall off along
 * the arch; a tooth out of line turns it little. Where fewer than three crowns stand near, the
 * usual angle of that tooth in an arch is taken from its number.
 */
final class ArchLine {
  /**
   * How far along the arch a crown has a say [mm, deviation of a Gaussian]: the next where too few
   * stand within the one before.
   */
  private static final double[] REACHES_MM = {9, 13, 19};

  /** Out of the arch against the front, by place from the midline [degrees]; common practice. */
  private static final double[] USUAL_DEG = {7, 22, 45, 64, 74, 80, 85, 88};

  /** Crowns count where their weights sum to this beside the tooth's own. */
  private static final double ENOUGH = 0.9;

  private final ArchFrame frame;
  private final List<ToothNumber> order = new ArrayList<>();
  private final List<double[]> xy = new ArrayList<>();
  private final double[] along;

  ArchLine(ArchFrame frame, SortedMap<ToothNumber, Vec3> crowns) {
    this.frame = frame;
    for (Map.Entry<ToothNumber, Vec3> crown : crowns.entrySet()) {
      Vec3 d = crown.getValue().minus(frame.origin());
      order.add(crown.getKey());
      xy.add(new double[] {d.dot(frame.x()), d.dot(frame.y())});
    }
    along = new double[order.size()];
    for (int i = 1; i < along.length; i++) {
      double[] a = xy.get(i - 1);
      double[] b = xy.get(i);
      along[i] = along[i - 1] + Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
  }

  /** Out of the arch at a tooth: unit vector across the occlusal direction, scan frame. */
  Vec3 outward(ToothNumber tooth) {
    double[] out = new double[0];
    for (int i = 0; i < REACHES_MM.length && out.length == 0; i++) {
      out = fitted(order.indexOf(tooth), REACHES_MM[i]);
    }
    if (out.length == 0) {
      out = usual(tooth);
    }
    return frame.toScan(new Vec3(out[0], out[1], 0));
  }

  /** To the midline along the arch at a tooth, scan frame. */
  Vec3 mesial(ToothNumber tooth) {
    Vec3 out = outward(tooth);
    // From the patient's right to left the arch runs along z × out turned by the jaw's hand.
    Vec3 toLeft = out.cross(frame.z()).times(tooth.jaw() == Jaw.UPPER ? 1 : -1);
    return tooth.side() == Side.RIGHT ? toLeft : toLeft.times(-1);
  }

  /**
   * Whether the numbers run the way round that the frame says: the share of crowns that lie on the
   * side of the midline where their number puts them [0 to 1]. A mirrored scan, or upper taken for
   * lower, gives about 0.
   */
  double handedness() {
    int right = 0;
    int all = 0;
    for (int i = 0; i < order.size(); i++) {
      if (!order.get(i).isIncisor()) {
        boolean upper = order.get(i).jaw() == Jaw.UPPER;
        boolean shouldBePositive = (order.get(i).side() == Side.LEFT) == upper;
        all++;
        right += xy.get(i)[0] > 0 == shouldBePositive ? 1 : 0;
      }
    }
    return all == 0 ? 1 : (double) right / all;
  }

  private double[] usual(ToothNumber tooth) {
    double angle = Math.toRadians(USUAL_DEG[tooth.place() - 1]);
    boolean left = tooth.side() == Side.LEFT;
    double side = left == (tooth.jaw() == Jaw.UPPER) ? 1 : -1;
    return new double[] {side * Math.sin(angle), Math.cos(angle)};
  }

  /** Out of the arch by the parabola about a crown; empty where too few crowns stand near. */
  private double[] fitted(int at, double reach) {
    if (at < 0 || order.size() < 3) {
      return new double[0];
    }
    // Normal equations of x(s) and y(s) over 1, s, s².
    double[] m = new double[5];
    double[] bx = new double[3];
    double[] by = new double[3];
    double others = 0;
    for (int i = 0; i < along.length; i++) {
      double s = along[i] - along[at];
      double w = Math.exp(-0.5 * s * s / (reach * reach));
      others += i == at ? 0 : w;
      double power = w;
      for (int k = 0; k < 5; k++) {
        m[k] += power;
        if (k < 3) {
          bx[k] += power * xy.get(i)[0];
          by[k] += power * xy.get(i)[1];
        }
        power *= s;
      }
    }
    double tx = slope(m, bx);
    double ty = slope(m, by);
    double length = Math.hypot(tx, ty);
    if (others < ENOUGH || !(length > 1e-9)) {
      return new double[0];
    }
    // The way out is across the line, on the side of the usual direction of that tooth.
    double[] usual = usual(order.get(at));
    double side = Math.signum(ty * usual[0] - tx * usual[1]);
    double sign = side == 0 ? 1 : side;
    return new double[] {sign * ty / length, -sign * tx / length};
  }

  /** The slope at 0 of the weighted parabola; of the weighted line where that is singular. */
  private static double slope(double[] m, double[] b) {
    double det =
        m[0] * (m[2] * m[4] - m[3] * m[3])
            - m[1] * (m[1] * m[4] - m[3] * m[2])
            + m[2] * (m[1] * m[3] - m[2] * m[2]);
    double scale = m[0] * m[2] * m[4];
    if (Math.abs(det) > 1e-6 * scale) {
      double second =
          m[0] * (b[1] * m[4] - m[3] * b[2])
              - b[0] * (m[1] * m[4] - m[3] * m[2])
              + m[2] * (m[1] * b[2] - b[1] * m[2]);
      return second / det;
    }
    double line = m[0] * m[2] - m[1] * m[1];
    return line > 0 ? (m[0] * b[1] - m[1] * b[0]) / line : 0;
  }
}
