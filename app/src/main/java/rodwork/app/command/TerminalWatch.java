package rodwork.app.command;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;
import rodwork.geometry.Watch;

/**
 * Shows how long work comes on, in one line of the terminal that is wiped at the end.
 *
 * <p>Only where the launcher says that stderr is a terminal ({@code -Drodwork.terminal=true}): Java
 * itself cannot tell. Work of less than half a second shows nothing.
 */
final class TerminalWatch implements Watch, AutoCloseable {
  private static final long FIRST_AFTER_NANOS = 500_000_000L;
  private static final long EVERY_NANOS = 100_000_000L;
  private static final String WIPE = "\r\u001b[K";

  private final PrintWriter terminal;
  private final boolean shown;
  private final AtomicLong next = new AtomicLong(System.nanoTime() + FIRST_AFTER_NANOS);
  private volatile boolean written;

  private TerminalWatch(PrintWriter terminal, boolean shown) {
    this.terminal = terminal;
    this.shown = shown;
  }

  static TerminalWatch on(PrintWriter terminal) {
    return new TerminalWatch(terminal, Boolean.getBoolean("rodwork.terminal"));
  }

  @Override
  public void progress(String what, double share) {
    long due = next.get();
    long now = System.nanoTime();
    if (shown && now - due >= 0 && next.compareAndSet(due, now + EVERY_NANOS)) {
      written = true;
      terminal.print(WIPE + String.format(Locale.ROOT, "%s %.0f %%", what, 100 * share));
      terminal.flush();
    }
  }

  @Override
  public boolean cancelled() {
    return false;
  }

  @Override
  public void close() {
    if (written) {
      terminal.print(WIPE);
      terminal.flush();
    }
  }
}
