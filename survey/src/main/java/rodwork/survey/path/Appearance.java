package rodwork.survey.path;

import java.util.List;

/**
 * What would show along one path.
 *
 * <p>A front tooth is worth the mean of {@code 1 − line/crown} (how low its survey line runs at
 * mid-facial) and, beside a space, {@code 1 − gap/gap₀}; the worth is the mean over them, 1 without
 * any.
 *
 * @param teeth one a front tooth, in the order of the sites
 * @param showsMm survey line height and dead space, mean over the teeth [mm]
 * @param worth 0 to 1
 */
public record Appearance(List<Reading> teeth, double showsMm, double worth) {

  /**
   * One front tooth.
   *
   * @param tooth FDI number
   * @param lineMm height of the survey line over the gum at mid-facial, along the path [mm]; 0
   *     where the surface is hardly undercut and there is none
   * @param crownMm height of the incisal edge over the gum there [mm]
   * @param gapMm widest dead space beside it, 0 where there is no space [mm]
   * @param hasGap whether it stands beside a space
   */
  public record Reading(int tooth, double lineMm, double crownMm, double gapMm, boolean hasGap) {
    double worth(double mostMm) {
      double low = crownMm > 0 ? 1 - Math.clamp(lineMm / crownMm, 0, 1) : 1;
      return hasGap ? (low + 1 - Math.min(1, gapMm / mostMm)) / 2 : low;
    }
  }

  static Appearance of(List<Reading> teeth, double deadSpaceMm) {
    if (teeth.isEmpty()) {
      return new Appearance(List.of(), 0, 1);
    }
    return new Appearance(
        List.copyOf(teeth),
        teeth.stream().mapToDouble(tooth -> tooth.lineMm() + tooth.gapMm()).average().orElse(0),
        teeth.stream().mapToDouble(tooth -> tooth.worth(deadSpaceMm)).average().orElse(1));
  }
}
