package rodwork.casework.drawing;

import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.function.ToDoubleFunction;

/**
 * Where a drawing has room for words: what is drawn is noted in cells, and words go where no cell
 * under them is taken. Mutable; lengths are mm on paper.
 */
final class FreeRoom {
  /** Side of a cell [mm]. */
  private static final double CELL_MM = 0.2;

  private final double left;
  private final double top;
  private final int across;
  private final boolean[] taken;

  FreeRoom(double left, double top, double width, double height) {
    this.left = left;
    this.top = top;
    this.across = Math.max(1, (int) Math.ceil(width / CELL_MM));
    this.taken = new boolean[across * Math.max(1, (int) Math.ceil(height / CELL_MM))];
  }

  /** Notes a line from one point to another. */
  void line(double[] a, double[] b) {
    int n = 1 + (int) Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / CELL_MM);
    for (int i = 0; i <= n; i++) {
      double t = (double) i / n;
      int at = cell(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]));
      if (at >= 0) {
        taken[at] = true;
      }
    }
  }

  /** Notes a field about its middle. */
  void field(double[] middle, double width, double height) {
    each(middle, width, height, at -> taken[at] = true);
  }

  /**
   * The middle of the field of that size that costs least and lies free; it is within the drawing.
   *
   * @param from where it would lie best
   * @param cost of a middle, no less than its distance from there; infinite: not there
   * @return empty where no place is free
   */
  Optional<double[]> place(
      double width, double height, double[] from, ToDoubleFunction<double[]> cost) {
    double[] best = null;
    double least = Double.POSITIVE_INFINITY;
    int down = taken.length / across;
    for (int row = 0; row < down; row += 2) {
      for (int column = 0; column < across; column += 2) {
        double[] at = {left + (column + 0.5) * CELL_MM, top + (row + 0.5) * CELL_MM};
        if (Math.hypot(at[0] - from[0], at[1] - from[1]) >= least) {
          continue;
        }
        double costs = cost.applyAsDouble(at);
        if (costs < least && free(at, width, height)) {
          least = costs;
          best = at;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean free(double[] middle, double width, double height) {
    if (middle[0] - width / 2 < left
        || middle[0] + width / 2 > left + across * CELL_MM
        || middle[1] - height / 2 < top
        || middle[1] + height / 2 > top + taken.length / across * CELL_MM) {
      return false;
    }
    boolean[] free = {true};
    each(middle, width, height, at -> free[0] &= !taken[at]);
    return free[0];
  }

  private void each(double[] middle, double width, double height, IntConsumer to) {
    for (double y = middle[1] - height / 2; y <= middle[1] + height / 2; y += CELL_MM) {
      for (double x = middle[0] - width / 2; x <= middle[0] + width / 2; x += CELL_MM) {
        int at = cell(x, y);
        if (at >= 0) {
          to.accept(at);
        }
      }
    }
  }

  /** The cell of a point; negative outside. */
  private int cell(double x, double y) {
    int column = (int) Math.floor((x - left) / CELL_MM);
    int row = (int) Math.floor((y - top) / CELL_MM);
    return column < 0 || column >= across || row < 0 || row >= taken.length / across
        ? -1
        : row * across + column;
  }
}
