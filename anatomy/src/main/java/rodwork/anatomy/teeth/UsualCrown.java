package rodwork.anatomy.teeth;

/**
 * The usual size of a crown [mm]: Ash and Nelson, Wheeler's Dental Anatomy, table 1-1, partly from
 * memory (Wheeler's Dental Anatomy).
 *
 * @param width mesiodistal
 * @param depth faciolingual
 * @param height from cervical line to cusp tip or edge
 */
public record UsualCrown(double width, double depth, double height) {
  private static final double[][] UPPER = {
    {8.5, 7, 10.5}, {6.5, 6, 9}, {7.5, 8, 10}, {7, 9, 8.5},
    {7, 9, 8.5}, {10, 11, 7.5}, {9, 11, 7}, {8.5, 10, 6.5}
  };
  private static final double[][] LOWER = {
    {5, 6, 9}, {5.5, 6.5, 9.5}, {7, 7.5, 11}, {7, 7.5, 8.5},
    {7, 8, 8}, {11, 10.5, 7.5}, {10.5, 10, 7}, {10, 9.5, 7}
  };

  /** Of a tooth by its FDI number. */
  public static UsualCrown of(int fdi) {
    double[] size = (fdi < 30 ? UPPER : LOWER)[fdi % 10 - 1];
    return new UsualCrown(size[0], size[1], size[2]);
  }

  /** Whether it has an edge or one cusp, and no table between cusps. */
  static boolean isFront(int fdi) {
    return fdi % 10 <= 3;
  }

  /** The teeth of a jaw from −X to +X of the arch frame: 18 to 28, or 38 to 48. */
  static int[] row(boolean upper) {
    int[] row = new int[16];
    for (int i = 0; i < 8; i++) {
      row[i] = (upper ? 18 : 38) - i;
      row[8 + i] = (upper ? 21 : 41) + i;
    }
    return row;
  }

  /** Place of a tooth in {@link #row}, of its jaw [0 to 15]. */
  static int order(int fdi) {
    int place = fdi % 10;
    boolean first = fdi / 10 == 1 || fdi / 10 == 3;
    return first ? 8 - place : 7 + place;
  }
}
