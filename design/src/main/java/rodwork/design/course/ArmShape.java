package rodwork.design.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import rodwork.geometry.Vec3;

/**
 * What a person made of a laid out arm: places of it pulled elsewhere. Immutable.
 *
 * <p>An arm has four handles: its origin, both ends of its middle third, and its tip. A pulled
 * place takes the arm along as far as the handles beside it, less and less towards them.
 *
 * @param pulls in order along the arm
 */
public record ArmShape(List<Pull> pulls) {
  /** As it was laid out. */
  public static final ArmShape AS_LAID = new ArmShape(List.of());

  /** Where an arm is held, as shares of its length from its origin. */
  public static final List<Double> HANDLES = List.of(0.0, 1 / 3.0, 2 / 3.0, 1.0);

  /** Places nearer than this share of the arm are one. */
  private static final double SAME = 1e-3;

  /**
   * A place of the arm pulled elsewhere.
   *
   * @param at share of the laid out arm's length, from its origin [0 to 1]
   * @param to where it was pulled to, scan frame [mm]
   */
  public record Pull(double at, Vec3 to) {
    public Pull {
      if (!(at >= 0 && at <= 1) || !to.isFinite()) {
        throw new IllegalArgumentException("an arm is pulled at a share of 0 to 1, not at " + at);
      }
    }
  }

  public ArmShape {
    pulls = pulls.stream().sorted(Comparator.comparingDouble(Pull::at)).toList();
  }

  /** Whether the tip itself was pulled. */
  public boolean movesTip() {
    return !pulls.isEmpty() && pulls.getLast().at > 1 - SAME;
  }

  /**
   * The line that a laid out one becomes.
   *
   * @param line from origin to tip [mm]
   * @param seat puts a moved point back onto what the arm lies on
   */
  List<Vec3> of(List<Vec3> line, UnaryOperator<Vec3> seat) {
    if (pulls.isEmpty()) {
      return line;
    }
    double[] share = shares(line);
    TreeMap<Double, Vec3> moves = new TreeMap<>();
    HANDLES.forEach(at -> moves.put(at, Vec3.ZERO));
    for (Pull pull : pulls) {
      moves.keySet().removeIf(at -> Math.abs(at - pull.at) < SAME);
      moves.put(pull.at, pull.to.minus(pointAt(line, share, pull.at)));
    }
    List<Vec3> shaped = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      Vec3 move = move(moves, share[i]);
      shaped.add(move.length() > 0 ? seat.apply(line.get(i).plus(move)) : line.get(i));
    }
    return shaped;
  }

  private static Vec3 move(TreeMap<Double, Vec3> moves, double at) {
    var before = moves.floorEntry(at);
    var behind = moves.ceilingEntry(at);
    if (before == null || behind == null) {
      return before != null ? before.getValue() : behind != null ? behind.getValue() : Vec3.ZERO;
    }
    double way = behind.getKey() - before.getKey();
    double t = way > 0 ? (at - before.getKey()) / way : 0;
    double eased = t * t * (3 - 2 * t);
    return before.getValue().times(1 - eased).plus(behind.getValue().times(eased));
  }

  private static double[] shares(List<Vec3> line) {
    double[] along = new double[line.size()];
    for (int i = 1; i < along.length; i++) {
      along[i] = along[i - 1] + line.get(i).distance(line.get(i - 1));
    }
    double whole = along[along.length - 1];
    for (int i = 0; i < along.length; i++) {
      along[i] = whole > 0 ? along[i] / whole : 0;
    }
    return along;
  }

  private static Vec3 pointAt(List<Vec3> line, double[] share, double at) {
    for (int i = 1; i < share.length; i++) {
      if (share[i] >= at) {
        double step = share[i] - share[i - 1];
        double t = step > 0 ? (at - share[i - 1]) / step : 0;
        return line.get(i - 1).plus(line.get(i).minus(line.get(i - 1)).times(t));
      }
    }
    return line.getLast();
  }
}
