package rodwork.anatomy.teeth;

import java.util.Map;
import java.util.TreeMap;

/**
 * Finds crowns of which a part was left to the gum: where a groove between cusps is as deep as a
 * margin, the walk stops in it. Gum does not reach up as high as a cusp; what lies near to the top
 * of a crown, well within its reach, and was taken by no tooth, is of that crown.
 */
final class HalfCrowns {
  /**
   * Gum stays this far under the top of a premolar or molar [mm]. On the labelled arches lost cusps
   * reach up to within 2 mm of the top.
   */
  private static final double UNDER_CUSPS_MM = 2.5;

  /** The same of an incisor or canine; a short one stands out of the gum by 2 mm at its sides. */
  private static final double UNDER_EDGE_MM = 1.5;

  /** Well within reach, see {@link ToothReach#off}; 0.85 to 1 give nearly the same. */
  private static final double WITHIN = 0.9;

  /** Less than this is no part of a crown [mm²]. */
  private static final double LEAST_MM2 = 2;

  private HalfCrowns() {}

  /**
   * Adds what was left to the cells that are known.
   *
   * @param points of each tooth, in the arch frame [mm]
   * @param known label of cells, −1 where it was to be found; is added to
   * @return whether anything was
   */
  static boolean claim(
      CellGraph graph, Map<Integer, double[]> points, CrownSpread spread, int[] known) {
    Map<Integer, Double> tops = new TreeMap<>();
    for (int c = 0; c < known.length; c++) {
      tops.merge(spread.label[c], graph.z(c), Math::max);
    }
    boolean any = false;
    for (ToothReach reach : ToothReach.of(points)) {
      double top = tops.getOrDefault(reach.fdi, Double.POSITIVE_INFINITY);
      double low = top - (UsualCrown.isFront(reach.fdi) ? UNDER_EDGE_MM : UNDER_CUSPS_MM);
      int[] left = new int[known.length];
      int count = 0;
      double area = 0;
      for (int c = 0; c < known.length; c++) {
        if (spread.label[c] == ToothLabels.GUM
            && known[c] < 0
            && !graph.rim[c]
            && graph.z(c) > low
            && reach.off(graph.x(c), graph.y(c), graph.z(c)) < WITHIN) {
          left[count++] = c;
          area += graph.area[c];
        }
      }
      if (area > LEAST_MM2) {
        any = true;
        for (int i = 0; i < count; i++) {
          known[left[i]] = reach.fdi;
        }
      }
    }
    return any;
  }
}
