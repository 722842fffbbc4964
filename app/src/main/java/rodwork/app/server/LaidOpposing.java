package rodwork.app.server;

import org.jspecify.annotations.Nullable;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;

/**
 * An opposing scan as it lies over a cast on the shelf.
 *
 * @param id of the open cast that it is
 * @param bite id of the open cast that it was laid by; null: it shares the frame
 */
record LaidOpposing(String id, @Nullable String bite, OpposingScan scan) {
  /** The same over the cast in another frame. */
  LaidOpposing over(OpenedCast cast) {
    return new LaidOpposing(id, bite, scan.over(cast));
  }
}
