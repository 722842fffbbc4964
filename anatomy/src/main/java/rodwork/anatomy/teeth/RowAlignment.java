package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Lays the sixteen teeth of a jaw along an arch: which stand, and from where to where each reaches.
 *
 * <p>An alignment by dynamic programming in the manner of Needleman and Wunsch (J Mol Biol 48,
 * 1970), of the row of usual crowns with the profile of the arch. A tooth costs by how far its
 * width is off the usual one times the size of this mouth, by ridge within it, and is rewarded by
 * inward folds at its ends; a missing one leaves a gap, which costs by the crown within it. The
 * size of the mouth is the best of a few. Costs are like negative logarithms of likelihoods, so
 * that the distance to the best other answer tells how sure a tooth is.
 */
final class RowAlignment {
  private static final double STEP = ArchPath.STEP_MM;
  private static final double SMALLEST = 0.84;
  private static final double SIZE_STEP = 0.04;
  private static final int SIZES = 9;
  private static final double SIZE_SPREAD = 0.08;
  private static final double WIDTH_SPREAD = 0.12;
  private static final double NARROWEST = 0.6;
  private static final double WIDEST = 1.45;

  /** Cost of a mm of ridge in a crown or of crown in a gap; less beyond the last teeth. */
  private static final double WRONG_PER_MM = 1.2;

  private static final double WRONG_BEYOND_PER_MM = 0.72;

  /** Two neighbours seldom stand apart. */
  private static final double APART_PER_MM = 0.9;

  /** A missing tooth leaves somewhat less than its width. */
  private static final double GAP_SHARE = 0.8;

  private static final double GAP_PER_MM = 0.12;
  private static final double FOLD_REWARD = 3;
  private static final double USUAL_FOLD = 0.8;

  /** Of a tooth, third molars apart, where nothing is known of it. */
  static final double ABSENT = 5;

  private static final double THIRD_MOLAR = 5;

  /** How far the midline may lie from the middle of the arch frame [mm]. */
  private static final double MIDLINE_SPREAD_MM = 2.5;

  private static final double NEVER = 1e9;

  /** What is known of a tooth before. */
  enum Known {
    MISSING,
    STANDS,
    OPEN
  }

  /** A stretch of the arch, in steps. */
  record Reach(int from, int to) {
    double middle() {
      return (from + to) / 2.0;
    }
  }

  /**
   * The teeth that stand.
   *
   * @param teeth from where to where each reaches
   * @param size of this mouth, 1 is usual
   * @param cost lower is likelier
   */
  record Answer(Map<Integer, Reach> teeth, double size, double cost) {}

  private final int[] row;
  private final Known[] known;
  private final double[] place;
  private final int n;
  private final double[] fold;
  private final double[] crownTo;
  private final double[] midline;

  /**
   * A row to lay.
   *
   * @param known of each tooth of the row
   * @param place a step that a tooth reaches over, NaN where not known
   */
  RowAlignment(ArchPath path, ArchProfile profile, int[] row, Known[] known, double[] place) {
    this.row = row;
    this.known = known;
    this.place = place;
    n = path.steps() + 1;
    fold = Arrays.copyOf(profile.fold, n);
    fold[n - 1] = n > 1 ? fold[n - 2] : 0;
    crownTo = new double[n];
    midline = new double[n];
    for (int i = 0; i < n; i++) {
      crownTo[i] = i == 0 ? 0 : crownTo[i - 1] + profile.crown[i - 1] * STEP;
      double x = path.x[Math.min(i, n - 2)] / MIDLINE_SPREAD_MM;
      midline[i] = x * x / 2;
    }
  }

  Answer best() {
    Answer best = null;
    for (int i = 0; i < SIZES; i++) {
      Answer answer = laid(SMALLEST + SIZE_STEP * i, -1, new Reach(0, 0));
      best = best == null || answer.cost < best.cost ? answer : best;
    }
    return best == null ? new Answer(Map.of(), 1, NEVER) : best;
  }

  /** How sure each tooth of an answer is: 1 − exp(−Δ/2), Δ the cost of having it elsewhere. */
  Map<Integer, Double> certainty(Answer answer) {
    Map<Integer, Double> sure = new TreeMap<>();
    for (int j = 0; j < row.length; j++) {
      Reach reach = answer.teeth.get(row[j]);
      if (reach != null) {
        double other = laid(answer.size, j, reach).cost;
        sure.put(row[j], 1 - Math.exp(-Math.max(0, other - answer.cost) / 2));
      }
    }
    return sure;
  }

  /** One tooth of the row in the table: how each step was come to. */
  private static final class Column {
    final double[] cost;
    final int[] from;
    final boolean[] stands;
    final boolean[] first;

    Column(int n) {
      cost = new double[n];
      from = new int[n];
      stands = new boolean[n];
      first = new boolean[n];
    }
  }

  /** The best row of one size in which a tooth, if any, does not overlap a place by half. */
  private Answer laid(double size, int barred, Reach bar) {
    Column[] table = new Column[row.length];
    double[] before = new double[n];
    Arrays.fill(before, NEVER);
    double skipped = 0;
    for (int j = 0; j < row.length; j++) {
      Column column = new Column(n);
      Arrays.fill(column.cost, NEVER);
      double width = size * UsualCrown.of(row[j]).width();
      boolean third = row[j] % 10 == 8;
      boolean mayMiss = known[j] == Known.MISSING || known[j] == Known.OPEN;
      double absent = known[j] == Known.OPEN && !third ? ABSENT : 0;
      if (mayMiss) {
        gap(column, before, width, absent);
      }
      if (known[j] != Known.MISSING) {
        double extra = third && known[j] == Known.OPEN ? THIRD_MOLAR : 0;
        stand(column, before, skipped, width, extra, place[j], barred == j ? bar : null);
      }
      if (row[j] % 10 == 1 && j < 8) {
        for (int s = 0; s < n; s++) {
          column.cost[s] += midline[s];
        }
      }
      skipped = mayMiss ? skipped + absent : NEVER;
      table[j] = column;
      before = column.cost;
    }
    int end = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int s = 0; s < n; s++) {
      double cost = before[s] + WRONG_BEYOND_PER_MM * (crownTo[n - 1] - crownTo[s]);
      if (cost < least) {
        least = cost;
        end = s;
      }
    }
    double turn = (size - 1) / SIZE_SPREAD;
    return new Answer(traced(table, end), size, least + turn * turn / 2);
  }

  private void gap(Column column, double[] before, double width, double absent) {
    for (int s0 = 0; s0 < n; s0++) {
      if (before[s0] >= NEVER) {
        continue;
      }
      for (int s = s0; s < n; s++) {
        double cost =
            before[s0]
                + absent
                + WRONG_PER_MM * (crownTo[s] - crownTo[s0])
                + GAP_PER_MM * Math.abs((s - s0) * STEP - GAP_SHARE * width);
        if (cost < column.cost[s]) {
          column.cost[s] = cost;
          column.from[s] = s0;
        }
      }
    }
  }

  private void stand(
      Column column,
      double[] before,
      double skipped,
      double width,
      double extra,
      double place,
      @Nullable Reach bar) {
    double[] start = new double[n];
    int[] left = new int[n];
    boolean[] first = new boolean[n];
    double running = NEVER;
    int at = 0;
    for (int s = 0; s < n; s++) {
      double step = s == 0 ? 0 : WRONG_PER_MM * (crownTo[s] - crownTo[s - 1]) + APART_PER_MM * STEP;
      running += step;
      if (before[s] <= running) {
        running = before[s];
        at = s;
      }
      double alone = skipped + WRONG_BEYOND_PER_MM * crownTo[s];
      first[s] = alone < running;
      start[s] = Math.min(alone, running);
      left[s] = at;
    }
    int narrow = Math.max(2, (int) (NARROWEST * width / STEP));
    int wide = (int) (WIDEST * width / STEP);
    for (int length = narrow; length <= wide; length++) {
      double off = (length * STEP - width) / (WIDTH_SPREAD * width);
      for (int s0 = 0; s0 + length < n; s0++) {
        int s = s0 + length;
        if (!(place >= s0 && place <= s) && !Double.isNaN(place)) {
          continue;
        }
        if (bar != null && 2 * (Math.min(s, bar.to) - Math.max(s0, bar.from)) > bar.to - bar.from) {
          continue;
        }
        double ridge = length * STEP - (crownTo[s] - crownTo[s0]);
        double cost =
            start[s0]
                + extra
                + off * off / 2
                + WRONG_PER_MM * ridge
                - FOLD_REWARD * (fold[s0] + fold[s] - 2 * USUAL_FOLD);
        if (cost < column.cost[s]) {
          column.cost[s] = cost;
          column.from[s] = s0;
          column.stands[s] = true;
        }
      }
    }
    for (int s = 0; s < n; s++) {
      if (column.stands[s]) {
        int s0 = column.from[s];
        column.first[s] = first[s0];
        from(column, s, s0, left[s0]);
      }
    }
  }

  /** Keeps both where a tooth begins and where the one before it ended, in one number. */
  private void from(Column column, int s, int begin, int end) {
    column.from[s] = begin * n + end;
  }

  private Map<Integer, Reach> traced(Column[] table, int end) {
    Map<Integer, Reach> teeth = new TreeMap<>();
    int s = end;
    for (int j = row.length - 1; j >= 0; j--) {
      Column column = table[j];
      if (column.cost[s] >= NEVER / 2) {
        break;
      }
      if (column.stands[s]) {
        int begin = column.from[s] / n;
        teeth.put(row[j], new Reach(begin, s));
        if (column.first[s]) {
          break;
        }
        s = column.from[s] % n;
      } else {
        s = column.from[s];
      }
    }
    return teeth;
  }
}
