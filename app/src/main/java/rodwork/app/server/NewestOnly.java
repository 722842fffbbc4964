package rodwork.app.server;

import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Watch;

/**
 * Does the newest of the jobs handed to it, one at a time, on a thread of its own. A waiting job is
 * dropped when a newer one comes; a running one is told to stop, unless results have been held up
 * for so long that the picture would stand still.
 */
final class NewestOnly implements AutoCloseable {
  /** A running job is let finish when the last result lies further back than this. */
  static final long PATIENCE_NANOS = 150_000_000L;

  /** Work that looks at its watch now and then, and sends its result itself. */
  interface Job {
    /**
     * Does the work.
     *
     * @param watch says when the result is no longer wanted
     * @throws java.util.concurrent.CancellationException if it was stopped
     */
    void run(Watch watch);
  }

  private final Object lock = new Object();
  private final LongSupplier nanoClock;
  private @Nullable Job waiting;
  private boolean waitingIsQuick;
  private @Nullable Stop running;
  private long lastResult;
  private boolean closed;

  /** The watch of one job. */
  private static final class Stop implements Watch {
    private final boolean quick;
    private volatile boolean stopped;

    Stop(boolean quick) {
      this.quick = quick;
    }

    @Override
    public void progress(String what, double share) {}

    @Override
    public boolean cancelled() {
      return stopped;
    }
  }

  /**
   * Starts the thread.
   *
   * @param name of the thread
   * @param nanoClock a clock as {@link System#nanoTime}
   */
  NewestOnly(String name, LongSupplier nanoClock) {
    this.nanoClock = nanoClock;
    this.lastResult = nanoClock.getAsLong();
    Thread.ofPlatform().daemon().name(name).start(this::work);
  }

  /** Hands over a job that overtakes all before it. */
  void submit(Job job) {
    submit(job, false);
  }

  /**
   * Hands over a quick job that overtakes all before it. A running one that is not quick is stopped
   * for it at once: the quick one's result will be there sooner.
   */
  void submitQuick(Job job) {
    submit(job, true);
  }

  private void submit(Job job, boolean quick) {
    synchronized (lock) {
      if (closed) {
        return;
      }
      waiting = job;
      waitingIsQuick = quick;
      if (running != null
          && ((quick && !running.quick) || nanoClock.getAsLong() - lastResult < PATIENCE_NANOS)) {
        running.stopped = true;
      }
      lock.notifyAll();
    }
  }

  /** Stops what runs and forgets what waits. */
  @Override
  public void close() {
    synchronized (lock) {
      closed = true;
      waiting = null;
      if (running != null) {
        running.stopped = true;
      }
      lock.notifyAll();
    }
  }

  private void work() {
    while (true) {
      Job job;
      Stop stop;
      synchronized (lock) {
        while (waiting == null && !closed) {
          try {
            lock.wait();
          } catch (InterruptedException _) {
            return;
          }
        }
        if (closed || waiting == null) {
          return;
        }
        job = waiting;
        waiting = null;
        stop = new Stop(waitingIsQuick);
        running = stop;
      }
      try {
        job.run(stop);
      } finally {
        synchronized (lock) {
          running = null;
          if (!stop.stopped) {
            lastResult = nanoClock.getAsLong();
          }
        }
      }
    }
  }
}
