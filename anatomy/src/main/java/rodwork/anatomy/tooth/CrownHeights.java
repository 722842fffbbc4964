package rodwork.anatomy.tooth;

import java.util.Arrays;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * How high margin and top of a crown lie along its axis, place by place: the gingival margin by the
 * direction about the axis, cusps and edges by the place from mesial to distal, facially and
 * lingually.
 *
 * <p>Places are in shares of half the crown's width and depth: (1, 0) mesial, (0, 1) facial.
 */
final class CrownHeights {
  private static final int DIRECTIONS = 72;
  private static final int ACROSS = 21;

  /** How far to mesial and distal a cusp counts as above a place, in half widths. */
  private static final double WINDOW = 0.25;

  /** Facial cusps reach this far over the middle, in half depths: edges lie near it. */
  private static final double OVER_MIDDLE = 0.3;

  private final double[] margin = new double[DIRECTIONS];
  private final double[][] top = new double[2][ACROSS];

  /**
   * Measures.
   *
   * @param margin points as (share to mesial, share to facial, height [mm])
   * @param crown vertices in the same way
   */
  CrownHeights(List<Vec3> margin, List<Vec3> crown) {
    Arrays.fill(this.margin, Double.NaN);
    int[] count = new int[DIRECTIONS];
    double[] sum = new double[DIRECTIONS];
    for (Vec3 p : margin) {
      int d = direction(p.x(), p.y());
      sum[d] += p.z();
      count[d]++;
    }
    for (int d = 0; d < DIRECTIONS; d++) {
      this.margin[d] = count[d] > 0 ? sum[d] / count[d] : Double.NaN;
    }
    fillRound(this.margin);
    for (double[] side : top) {
      Arrays.fill(side, Double.NEGATIVE_INFINITY);
    }
    double highest = Double.NEGATIVE_INFINITY;
    for (Vec3 p : crown) {
      highest = Math.max(highest, p.z());
      for (int i = 0; i < ACROSS; i++) {
        double at = 2.0 * i / (ACROSS - 1) - 1;
        if (Math.abs(p.x() - at) <= WINDOW) {
          if (p.y() > -OVER_MIDDLE) {
            top[0][i] = Math.max(top[0][i], p.z());
          }
          if (p.y() < OVER_MIDDLE) {
            top[1][i] = Math.max(top[1][i], p.z());
          }
        }
      }
    }
    for (double[] side : top) {
      for (int i = 0; i < ACROSS; i++) {
        if (Double.isInfinite(side[i])) {
          side[i] = highest;
        }
      }
    }
  }

  /** Height of the margin below a place [mm]. */
  double margin(double mesial, double facial) {
    return margin[direction(mesial, facial)];
  }

  /** Height of the cusp tip or edge above a place [mm]. */
  double top(double mesial, double facial) {
    int i = (int) Math.round((Math.clamp(mesial, -1, 1) + 1) / 2 * (ACROSS - 1));
    return top[facial >= 0 ? 0 : 1][i];
  }

  private static int direction(double mesial, double facial) {
    double turns = Math.atan2(facial, mesial) / (2 * Math.PI);
    return Math.floorMod((int) Math.floor(turns * DIRECTIONS + 0.5), DIRECTIONS);
  }

  /** Directions without a point take what lies between their neighbours. */
  private static void fillRound(double[] values) {
    int n = values.length;
    double[] known = values.clone();
    for (int i = 0; i < n; i++) {
      if (Double.isNaN(known[i])) {
        int before = 1;
        while (before < n && Double.isNaN(known[(i - before + n) % n])) {
          before++;
        }
        int after = 1;
        while (after < n && Double.isNaN(known[(i + after) % n])) {
          after++;
        }
        double a = known[(i - before + n) % n];
        double b = known[(i + after) % n];
        values[i] = before < n ? (a * after + b * before) / (before + after) : 0;
      }
    }
  }
}
