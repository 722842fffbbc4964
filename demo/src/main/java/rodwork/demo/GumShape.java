package rodwork.demo;

import java.util.Map;

/**
 * How the gum of one arch is formed.
 *
 * @param facialWall how far the facial wall stands out, by depth below the margin line [mm by mm]
 * @param lingualWall the same of the lingual wall, positive to lingual
 * @param vestibuleZ height of the vestibule's floor by distance from the midline along the arch
 *     [mm]
 * @param backZ height of the crest behind the last tooth or space, by mm behind it [mm]
 * @param resorption how far the crest of a space lies below the margins beside it [mm]
 * @param narrowing how much narrower on each side a bare ridge is [mm]
 * @param frena places of the folds of the vestibule along the arch [mm]
 * @param hollows by FDI number: how far the gum below that tooth falls back [mm]
 */
record GumShape(
    Curve facialWall,
    Curve lingualWall,
    Curve vestibuleZ,
    Curve backZ,
    double resorption,
    double narrowing,
    double[] frena,
    Map<Integer, Double> hollows) {

  double hollow(int fdi) {
    return hollows.getOrDefault(fdi, 0.0);
  }

  /** How far the gum swells over the root of a tooth [mm]. */
  double rootSwelling(int fdi) {
    if (hollow(fdi) > 0) {
      return 0;
    }
    return switch (fdi % 10) {
      case 3 -> 1.0;
      case 1, 2 -> 0.55;
      case 4, 5 -> 0.5;
      default -> 0.35;
    };
  }
}
