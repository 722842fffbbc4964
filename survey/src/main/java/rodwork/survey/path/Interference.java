package rodwork.survey.path;

import java.util.List;

/**
 * What stands in the way of rigid parts along one path.
 *
 * <p>A zone is worth {@code 1/(1 + m/m₀)}, with m its mean undercut depth and m₀ the depth at which
 * it is worth half; the worth is the mean over the zones, 1 without any.
 *
 * @param zones one a zone, in the order of the sites
 * @param meanMm mean over the zones of their mean depths [mm]
 * @param worth 0 to 1
 */
public record Interference(List<Reading> zones, double meanMm, double worth) {

  /**
   * One zone.
   *
   * @param zone which
   * @param meanMm undercut depth, mean over its surface; stand-off where a bar passes [mm]
   * @param deepestMm greatest [mm]
   * @param undercutMm2 its surface that is undercut by more than 0.05 mm [mm²]
   * @param volumeMm3 space between the surface and the upright lines that come down free: depth
   *     times the surface as seen from the side [mm³]
   */
  public record Reading(
      Zone zone, double meanMm, double deepestMm, double undercutMm2, double volumeMm3) {}

  static Interference of(List<Reading> zones, double halfMm) {
    if (zones.isEmpty()) {
      return new Interference(List.of(), 0, 1);
    }
    double mean = zones.stream().mapToDouble(Reading::meanMm).average().orElse(0);
    double worth =
        zones.stream().mapToDouble(zone -> 1 / (1 + zone.meanMm() / halfMm)).average().orElse(1);
    return new Interference(List.copyOf(zones), mean, worth);
  }
}
