package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** A place on the biting surface of each tooth, amid its stretch of the arch. */
final class CrownTops {
  /** The middle share of a stretch that is looked at. */
  private static final double MIDDLE = 0.3;

  private static final double HALF_WIDTH_MM = 7;
  private static final double CROWN_MM = 4;

  private static final double EDGE_MM = 3;
  private static final double LOW_MM = 5;
  private static final double NEAR_MM = 0.7;

  private static final int NEAREST = 8;

  private CrownTops() {}

  /** Places in the arch frame [mm]; a stretch without surface has none. */
  static Map<Integer, double[]> of(
      CellGraph graph, ArchPath path, boolean[] base, Map<Integer, RowAlignment.Reach> teeth) {
    Map<Integer, double[]> tops = new TreeMap<>();
    teeth.forEach(
        (fdi, reach) -> {
          double[] top = top(graph, path, base, fdi, reach);
          if (top.length > 0) {
            tops.put(fdi, top);
          }
        });
    return tops;
  }

  private static double[] top(
      CellGraph graph, ArchPath path, boolean[] base, int fdi, RowAlignment.Reach reach) {
    double middle = reach.middle();
    double share = MIDDLE * (reach.to() - reach.from());
    int[] cells =
        IntStream.range(0, graph.size())
            .filter(
                c ->
                    !base[c]
                        && Math.abs(path.along[c] - middle) < share
                        && Math.abs(path.off[c]) < HALF_WIDTH_MM)
            .toArray();
    if (cells.length == 0) {
      return new double[0];
    }
    double[] z = Arrays.stream(cells).mapToDouble(graph::z).sorted().toArray();
    double top = z[z.length - Math.max(1, z.length / 10)];
    int[] high =
        Arrays.stream(cells)
            .filter(c -> graph.z(c) > top - (UsualCrown.isFront(fdi) ? EDGE_MM : CROWN_MM))
            .toArray();
    double off;
    if (UsualCrown.isFront(fdi)) {
      double sum = 0;
      double weights = 0;
      for (int c : high) {
        double w = graph.area[c] * (graph.z(c) - top + EDGE_MM + 0.2);
        sum += w * path.off[c];
        weights += w;
      }
      off = sum / weights;
    } else {
      double[] offs = Arrays.stream(high).mapToDouble(c -> path.off[c]).sorted().toArray();
      off = (offs[offs.length / 20] + offs[offs.length - 1 - offs.length / 20]) / 2;
    }
    int best = -1;
    double near = NEAR_MM;
    while (best < 0 && near < HALF_WIDTH_MM) {
      for (int c : high) {
        double way = Math.hypot((path.along[c] - middle) * ArchPath.STEP_MM, path.off[c] - off);
        if (way < near && graph.z(c) > top - LOW_MM && (best < 0 || graph.z(c) > graph.z(best))) {
          best = c;
        }
      }
      near *= 1.5;
    }
    return best < 0 ? new double[0] : new double[] {graph.x(best), graph.y(best), graph.z(best)};
  }

  /** Places amid what has been found of each tooth: of the cells nearest to its middle the top. */
  static Map<Integer, double[]> again(CellGraph graph, int[] label, Set<Integer> teeth) {
    Map<Integer, double[]> tops = new TreeMap<>();
    for (int fdi : teeth) {
      int[] own = IntStream.range(0, label.length).filter(c -> label[c] == fdi).toArray();
      double x = 0;
      double y = 0;
      double area = 0;
      for (int c : own) {
        x += graph.area[c] * graph.x(c);
        y += graph.area[c] * graph.y(c);
        area += graph.area[c];
      }
      double cx = x / area;
      double cy = y / area;
      Arrays.stream(own)
          .boxed()
          .sorted(Comparator.comparingDouble(c -> Math.hypot(graph.x(c) - cx, graph.y(c) - cy)))
          .limit(NEAREST)
          .max(Comparator.comparingDouble(graph::z))
          .ifPresent(c -> tops.put(fdi, new double[] {graph.x(c), graph.y(c), graph.z(c)}));
    }
    return tops;
  }
}
