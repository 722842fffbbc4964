package rodwork.survey;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * A piece of survey line, or an edge of the band that stands for it where the surface is nearly
 * parallel to the path.
 *
 * @param kind line, or upper or lower edge of a band
 * @param points polyline on the surface, scan frame [mm]
 * @param closed whether the last point joins the first
 */
public record SurveyLine(Kind kind, List<Vec3> points, boolean closed) {
  /** What a survey curve stands for. */
  public enum Kind {
    LINE,
    BAND_UPPER,
    BAND_LOWER
  }

  public SurveyLine {
    points = List.copyOf(points);
  }

  /** Length of the polyline [mm]. */
  public double lengthMm() {
    return Polylines.length(points, closed);
  }
}
