package rodwork.survey.seating;

import java.util.Arrays;
import rodwork.geometry.Vec3;
import rodwork.geometry.overhang.Overhang;

/**
 * One pad of a key: upright above the cast's upper envelope, which is grown by the gap all round,
 * so that the pad lifts off along the axis whatever lies below.
 */
final class Pad {
  /** The pad reaches down this far below the highest place under it [mm]. */
  private static final double REACH_DOWN_MM = 3;

  /**
   * Steeper walls are filled up to this slope: a key needs no contact there, and a cliff narrower
   * than a cell of the surface could not be followed.
   */
  private static final double STEEPEST = 2;

  /** Grid points to a gap. */
  private static final int FINENESS = 4;

  final double x;
  final double y;
  private final double radius;
  private final double step;
  private final int side;
  private final double[] floor;

  /**
   * A pad about a seat.
   *
   * @param e1 first horizontal direction
   * @param e2 second horizontal direction
   */
  Pad(Overhang overhang, Vec3 e1, Vec3 e2, Vec3 seat, double radius, double gap) {
    this.x = seat.dot(e1);
    this.y = seat.dot(e2);
    this.radius = radius;
    this.step = gap / FINENESS;
    int half = (int) Math.ceil(radius / step) + 2 * FINENESS;
    this.side = 2 * half + 1;
    double[] top = new double[side * side];
    double highest = Double.NEGATIVE_INFINITY;
    Vec3 axis = overhang.axis();
    for (int j = 0; j < side; j++) {
      for (int i = 0; i < side; i++) {
        double px = x + (i - half) * step;
        double py = y + (j - half) * step;
        double h =
            overhang.topOver(e1.times(px).plus(e2.times(py)).plus(axis.times(seat.dot(axis))));
        top[j * side + i] = h;
        if (Math.hypot(px - x, py - y) < radius) {
          highest = Math.max(highest, h);
        }
      }
    }
    double lowest = highest - REACH_DOWN_MM;
    this.floor = new double[side * side];
    Arrays.fill(floor, lowest);
    // A ball of the gap's radius rolled over the envelope, from grid point to grid point.
    for (int dj = -FINENESS; dj <= FINENESS; dj++) {
      for (int di = -FINENESS; di <= FINENESS; di++) {
        double rise2 = gap * gap - (di * di + dj * dj) * step * step;
        if (rise2 < -1e-12) {
          continue;
        }
        double rise = Math.sqrt(Math.max(0, rise2));
        for (int j = Math.max(0, -dj); j < Math.min(side, side - dj); j++) {
          for (int i = Math.max(0, -di); i < Math.min(side, side - di); i++) {
            int to = j * side + i;
            floor[to] = Math.max(floor[to], top[(j + dj) * side + i + di] + rise);
          }
        }
      }
    }
    fill(1);
    fill(-1);
  }

  /** Two sweeps over the grid that leave no step steeper than the limit. */
  private void fill(int way) {
    int n = side * side;
    double straight = STEEPEST * step;
    double oblique = straight * Math.sqrt(2);
    for (int k = 0; k < n; k++) {
      int at = way > 0 ? k : n - 1 - k;
      int i = at % side - way;
      int j = at / side - way;
      boolean ahead = j >= 0 && j < side;
      double h = floor[at];
      if (i >= 0 && i < side) {
        h = Math.max(h, floor[at - way] - straight);
        h = ahead ? Math.max(h, floor[at - way * (side + 1)] - oblique) : h;
      }
      if (ahead) {
        h = Math.max(h, floor[at - way * side] - straight);
        int other = at % side + way;
        if (other >= 0 && other < side) {
          h = Math.max(h, floor[at - way * (side - 1)] - oblique);
        }
      }
      floor[at] = h;
    }
  }

  /** Negative inside the pad, taken as without end upwards. */
  double at(double px, double py, double pz) {
    double around = Math.hypot(px - x, py - y) - radius;
    if (around > 1) {
      return around;
    }
    double u = Math.clamp((px - x) / step + (side - 1) / 2.0, 0, side - 1.001);
    double v = Math.clamp((py - y) / step + (side - 1) / 2.0, 0, side - 1.001);
    int i = (int) u;
    int j = (int) v;
    double a = floor[j * side + i];
    double b = floor[j * side + i + 1];
    double c = floor[(j + 1) * side + i];
    double d = floor[(j + 1) * side + i + 1];
    double fu = u - i;
    double fv = v - j;
    double h = (a * (1 - fu) + b * fu) * (1 - fv) + (c * (1 - fu) + d * fu) * fv;
    double slope = Math.min(2 * STEEPEST, Math.hypot(b - a + d - c, c - a + d - b) / (2 * step));
    return Math.max(around, (h - pz) / Math.sqrt(1 + slope * slope));
  }
}
