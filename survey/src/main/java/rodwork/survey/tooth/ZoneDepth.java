package rodwork.survey.tooth;

import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.survey.RodReading;

/**
 * The undercut of one zone of a crown.
 *
 * @param zone which
 * @param deepest the deepest place that a gauge can be held to; empty: there is none
 * @param hiddenMm a deeper reading of the zone that is flagged, such as in an embrasure [mm]; 0:
 *     there is none
 */
public record ZoneDepth(CrownZone zone, Optional<Deepest> deepest, double hiddenMm) {
  /**
   * A deepest place.
   *
   * @param point scan frame [mm]
   * @param triangle that holds it
   * @param reading what the rod tells there
   * @param fromMarginMm to the gingival margin along the surface, in the place's own section, as
   *     exact as the label's edge; NaN: not known
   * @param overMarginMm the same along the path
   */
  public record Deepest(
      Vec3 point, int triangle, RodReading reading, double fromMarginMm, double overMarginMm) {
    /** Undercut depth u [mm]. */
    public double depthMm() {
      return reading.overhang().depthMm();
    }
  }

  /** The depth that counts [mm]; 0 where there is none. */
  public double depthMm() {
    return deepest.map(Deepest::depthMm).orElse(0.0);
  }
}
