package rodwork.geometry;

import java.util.concurrent.CancellationException;

/**
 * What long work reports to, and through which it is stopped.
 *
 * <p>Implementations must be safe to call from several threads.
 */
public interface Watch {
  /** Reports nothing, never stops. */
  Watch NONE =
      new Watch() {
        @Override
        public void progress(String what, double share) {}

        @Override
        public boolean cancelled() {
          return false;
        }
      };

  /**
   * Tells how far the work has come.
   *
   * @param what the part of the work now under way, in a few words
   * @param share how much of it is done [0 to 1]
   */
  void progress(String what, double share);

  /** Whether the result is no longer wanted. */
  boolean cancelled();

  /**
   * Ends the work if it is no longer wanted; called at least every few milliseconds by long loops.
   *
   * @throws CancellationException if {@link #cancelled()}
   */
  default void check() {
    if (cancelled()) {
      throw new CancellationException("stopped on request");
    }
  }
}
