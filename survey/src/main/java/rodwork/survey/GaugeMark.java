package rodwork.survey;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * Where a gauge of one size reaches: a piece of the lower edge of the undercut of less than that
 * depth below the survey line.
 *
 * @param gaugeMm size of the gauge [mm]
 * @param points polyline on the surface, scan frame [mm]
 * @param closed whether the last point joins the first
 */
public record GaugeMark(double gaugeMm, List<Vec3> points, boolean closed) {
  public GaugeMark {
    points = List.copyOf(points);
  }

  /** Length of the polyline [mm]. */
  public double lengthMm() {
    return Polylines.length(points, closed);
  }
}
