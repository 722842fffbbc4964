package rodwork.app.picture;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * A curve on the cast to be drawn.
 *
 * @param kind what it is
 * @param points its points in the scan frame [mm]; a closed curve repeats its first
 */
public record PictureCurve(Kind kind, List<Vec3> points) {
  /** What a curve stands for. */
  public enum Kind {
    SURVEY_LINE,
    /** One edge of the band that stands for the survey line along a guiding plane. */
    BAND_EDGE,
    GAUGE_MARK
  }

  public PictureCurve {
    points = List.copyOf(points);
  }
}
