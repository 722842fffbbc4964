package rodwork.survey.path;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import rodwork.geometry.Vec3;

/**
 * What could hold a denture along one path.
 *
 * <p>An abutment is credited with the depth at its best place, up to the gauge wanted; with nothing
 * where that place has no undercut at the reference orientation: it would hold along the path only,
 * while food pulls along the occlusal normal. {@code worth = c·(1 + e)/2}, with c the mean over the
 * abutments of credit to gauge, and e the weaker side's mean to the stronger side's.
 *
 * @param abutments one a tooth, in rising order
 * @param shortMm what is missing to the gauge, mean over the abutments of the weaker side [mm]
 * @param evenness the weaker side's credit to the stronger side's [0 to 1]
 * @param worth 0 to 1
 */
public record Retention(List<Abutment> abutments, double shortMm, double evenness, double worth) {

  /**
   * The best place of one tooth.
   *
   * @param tooth FDI number
   * @param site where on the tooth
   * @param place scan frame [mm]
   * @param depthMm undercut there at this path [mm]
   * @param referenceMm undercut there at the reference orientation [mm]
   * @param creditMm what of it counts, at most the gauge wanted [mm]
   * @param riseMm how far the terminal travels along the path until it is free [mm]
   */
  public record Abutment(
      int tooth,
      TerminalSite site,
      Vec3 place,
      double depthMm,
      double referenceMm,
      double creditMm,
      double riseMm) {}

  static Retention of(List<Abutment> abutments, double gaugeMm) {
    if (abutments.isEmpty()) {
      return new Retention(List.of(), gaugeMm, 1, 0);
    }
    List<Double> sides =
        Stream.of(true, false)
            .map(right -> abutments.stream().filter(a -> a.site().right() == right).toList())
            .filter(side -> !side.isEmpty())
            .map(Retention::meanCredit)
            .toList();
    double weak = Collections.min(sides);
    double strong = Collections.max(sides);
    double evenness = strong > 0 ? weak / strong : 1;
    double mean = meanCredit(abutments) / gaugeMm;
    return new Retention(
        List.copyOf(abutments), gaugeMm - weak, evenness, mean * (1 + evenness) / 2);
  }

  private static double meanCredit(List<Abutment> abutments) {
    return abutments.stream().mapToDouble(Abutment::creditMm).average().orElse(0);
  }
}
