package rodwork.anatomy.space;

import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;

/**
 * Usual mesiodistal widths of crowns [mm]: Ash and Nelson, Wheeler's Dental Anatomy, table 1-1
 * (first and second incisors, second premolar and first molar of the upper jaw seen, the rest from
 * memory).
 */
final class UsualWidths {
  private static final double[] UPPER = {8.5, 6.5, 7.5, 7.0, 7.0, 10.0, 9.0, 8.5};
  private static final double[] LOWER = {5.0, 5.5, 7.0, 7.0, 7.0, 11.0, 10.5, 10.0};

  private UsualWidths() {}

  static double of(ToothNumber tooth) {
    return (tooth.jaw() == Jaw.UPPER ? UPPER : LOWER)[tooth.place() - 1];
  }
}
