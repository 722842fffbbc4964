package rodwork.survey.tripod;

import static rodwork.rules.Threshold.own;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that tripod marks rest on.
 *
 * @param flattest least slope of the surface at a mark against the horizontal
 * @param steepest greatest slope
 * @param differ by how much the three distances differ at least, so that they pair one to one
 * @param disagree by how much a distance found again may be off
 * @param picking error of setting or picking a mark, in each direction along the surface
 * @param fromRim least distance of a mark from the rim of a scan
 * @param fitShare least share of a rescan that lies on the first scan
 */
public record TripodRules(
    Threshold flattest,
    Threshold steepest,
    Threshold differ,
    Threshold disagree,
    Threshold picking,
    Threshold fromRim,
    Threshold fitShare) {
  /** The values Rodwork ships with. */
  public static final TripodRules SHIPPED =
      new TripodRules(
          own(
              "tripod-flattest",
              20,
              "degrees",
              "on flatter surfaces a level line is not well defined"),
          own("tripod-steepest", 70, "degrees", "on steeper surfaces a rod's tip slides down"),
          own("tripod-distances-differ", 2, "mm", "three times the greatest disagreement allowed"),
          own("tripod-disagree", 0.6, "mm", "three times the error of picking a mark"),
          own("tripod-picking", 0.2, "mm", "the width of a sharp pencil line"),
          own("tripod-from-rim", 2, "mm", "rims of scans are ragged"),
          own("rescan-share", 0.7, "1", "other mouths reach 0.1 to 0.4, the same one 0.9 to 1"));

  /** The values of a rulebook. */
  public static TripodRules from(Thresholds book) {
    return new TripodRules(
        book.get("tripod-flattest", "degrees"),
        book.get("tripod-steepest", "degrees"),
        book.get("tripod-distances-differ", "mm"),
        book.get("tripod-disagree", "mm"),
        book.get("tripod-picking", "mm"),
        book.get("tripod-from-rim", "mm"),
        book.get("rescan-share", "1"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(flattest, steepest, differ, disagree, picking, fromRim, fitShare);
  }
}
