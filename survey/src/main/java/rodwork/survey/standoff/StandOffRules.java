package rodwork.survey.standoff;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that stand-off rests on.
 *
 * @param near upper place below the margin, along the surface
 * @param far lower place
 * @param floorRise how far the surface must rise again to be the floor of the vestibule
 * @param barWidth width of a bar: stand-off counts to both sides of its middle
 * @param shallow undercut from which the tissue counts as undercut
 * @param scanAccuracy declared accuracy of the scan
 */
public record StandOffRules(
    Threshold near,
    Threshold far,
    Threshold floorRise,
    Threshold barWidth,
    Threshold shallow,
    Threshold scanAccuracy) {

  /** The values of a rulebook. */
  public static StandOffRules from(Thresholds book) {
    return new StandOffRules(
        book.get("stand-off-near", "mm"),
        book.get("stand-off-far", "mm"),
        book.get("vestibule-floor-rise", "mm"),
        book.get("bar-width", "mm"),
        book.get("shallow-undercut", "mm"),
        book.get("scan-accuracy", "mm"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(near, far, floorRise, barWidth, shallow, scanAccuracy);
  }
}
