package rodwork.geometry.overhang;

/**
 * What an overhang is measured with.
 *
 * @param capMm largest depth told apart [mm]
 * @param shankRadiusMm radius of the gauge's shank [mm]
 * @param reachMm how near to the free line the shank must come [mm]
 */
public record OverhangLimits(double capMm, double shankRadiusMm, double reachMm) {
  public OverhangLimits {
    if (!(capMm > 0) || !(shankRadiusMm > 0) || !(reachMm >= 0)) {
      throw new IllegalArgumentException(
          "cap, shank radius and reach must be positive [mm]: "
              + capMm
              + ", "
              + shankRadiusMm
              + ", "
              + reachMm);
    }
  }
}
