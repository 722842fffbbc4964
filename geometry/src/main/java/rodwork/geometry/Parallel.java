package rodwork.geometry;

import java.util.stream.IntStream;

/**
 * Loops over index ranges on all cores.
 *
 * <p>Bodies write only to places that belong to their own indices, so that results do not depend on
 * how the ranges fall.
 */
public final class Parallel {
  private Parallel() {}

  /** Work on the indices {@code from <= i < to}. */
  @FunctionalInterface
  public interface Range {
    void run(int from, int to);
  }

  /**
   * Runs a body over 0 to n in chunks; asks the watch before each chunk.
   *
   * @param n number of indices
   * @param chunk indices a chunk; small enough that a chunk takes at most a few milliseconds
   * @param watch stops the loop between chunks
   * @param body what to do
   */
  public static void chunks(int n, int chunk, Watch watch, Range body) {
    int count = (n + chunk - 1) / chunk;
    if (count == 1) {
      // Nothing to share: where many small loops run side by side, forking costs more than the
      // work.
      watch.check();
      body.run(0, n);
      return;
    }
    IntStream.range(0, count)
        .parallel()
        .forEach(
            i -> {
              watch.check();
              body.run(i * chunk, Math.min(n, (i + 1) * chunk));
            });
  }
}
