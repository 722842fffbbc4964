package rodwork.survey.plane;

import static rodwork.rules.Threshold.own;
import static rodwork.rules.Threshold.taught;

import java.util.List;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that guiding planes rest on.
 *
 * @param parallel how near to parallel a surface must be to guide
 * @param divergence undercut that a guiding surface may have
 * @param normalScale scale over which normals are fitted
 * @param heightBounded wanted height next to a bounded space
 * @param heightFreeEnd wanted height next to a free end
 * @param widthShare wanted width as a share of the faciolingual width of the crown
 * @param belowRidge how far below the marginal ridge a plane starts
 * @param sections sections across a plane
 */
public record PlaneRules(
    Threshold parallel,
    Threshold divergence,
    Threshold normalScale,
    Threshold heightBounded,
    Threshold heightFreeEnd,
    Threshold widthShare,
    Threshold belowRidge,
    Threshold sections) {

  /** The values Rodwork ships with. */
  public static final PlaneRules SHIPPED =
      new PlaneRules(
          new Threshold(
              "plane-parallel",
              3,
              "degrees",
              "2 to 3 degrees of occlusal convergence accepted a side; no standard found",
              Standing.FROM_MEMORY),
          own("plane-divergence", 0.02, "mm", "below the accuracy of a scan"),
          own("plane-normal-scale", 0.5, "mm", "wider than roughness, narrower than a plane"),
          taught("plane-height-bounded", 3, "mm", "2 to 4 mm next to a bounded space"),
          taught("plane-height-free-end", 2, "mm", "1.5 to 2 mm next to a distal extension"),
          taught("plane-width-share", 1.0 / 3, "1", "a third of the faciolingual width"),
          own("plane-below-ridge", 0.5, "mm", "the marginal ridge itself is rounded, not cut"),
          own("plane-sections", 5, "1", "a plane of 3 mm is seen every 0.6 mm"));

  /** The values of a rulebook. */
  public static PlaneRules from(Thresholds book) {
    return new PlaneRules(
        book.get("plane-parallel", "degrees"),
        book.get("plane-divergence", "mm"),
        book.get("plane-normal-scale", "mm"),
        book.get("plane-height-bounded", "mm"),
        book.get("plane-height-free-end", "mm"),
        book.get("plane-width-share", "1"),
        book.get("plane-below-ridge", "mm"),
        book.get("plane-sections", "1"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        parallel,
        divergence,
        normalScale,
        heightBounded,
        heightFreeEnd,
        widthShare,
        belowRidge,
        sections);
  }
}
