package rodwork.geometry.registration;

/**
 * How one scan lies on another.
 *
 * @param motion from the moving scan's frame to the fixed scan's frame
 * @param medianMm median distance of the compared points that overlap from the fixed surface [mm]
 * @param rmsMm root of the mean squared distance of the points that count [mm]
 * @param share share of the compared points that lie within {@link #NEAR_MM} of the fixed surface
 * @param points how many points were compared
 */
public record Registration(
    RigidMotion motion, double medianMm, double rmsMm, double share, int points) {
  /** Two scans of one cast lie closer than this wherever both have surface [mm]. */
  public static final double NEAR_MM = 0.3;
}
