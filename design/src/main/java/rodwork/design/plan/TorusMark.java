package rodwork.design.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.chart.Torus;

/**
 * A torus that the chart tells of, and how the major connector lies to it. Immutable.
 *
 * @param site where it grows
 * @param edge on the cast: all round a palatal one, closed; along the upper edge of a mandibular
 *     one, open; empty where the chart does not tell place and size, or the scan does not show it
 * @param roomMm between it and the major connector [mm]; 0 or less where that lies over it; empty:
 *     not known, or there is no connector
 */
public record TorusMark(Torus.Site site, Optional<Line> edge, OptionalDouble roomMm) {
  /** Whether the connector lies over it, or may do so as nobody knows. */
  public boolean mayBeCovered() {
    return roomMm.isEmpty() || roomMm.getAsDouble() <= 0;
  }
}
