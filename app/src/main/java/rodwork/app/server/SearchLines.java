package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import rodwork.app.report.Json;
import rodwork.geometry.Watch;

/**
 * The answer to a long question as lines of JSON, each sent when it is known: how far the work has
 * come, and what it found. One who goes away stops the work. Safe for several threads.
 */
final class SearchLines implements Watch {
  private static final long BETWEEN_NANOS = 100_000_000;

  private final OutputStream out;
  private long lastNanos = System.nanoTime() - BETWEEN_NANOS;
  private volatile boolean gone;

  SearchLines(OutputStream out) {
    this.out = out;
  }

  @Override
  public synchronized void progress(String what, double share) {
    long now = System.nanoTime();
    if (now - lastNanos >= BETWEEN_NANOS) {
      lastNanos = now;
      ObjectNode line = Json.object();
      line.put("what", what);
      Json.put(line, "share", share);
      send("progress", line);
    }
  }

  @Override
  public boolean cancelled() {
    return gone;
  }

  /** Sends one line under a name of its kind. */
  synchronized void send(String kind, ObjectNode content) {
    if (gone) {
      return;
    }
    ObjectNode line = Json.object();
    line.set(kind, content);
    try {
      out.write((Json.compact(line) + "\n").getBytes(StandardCharsets.UTF_8));
      out.flush();
    } catch (IOException _) {
      gone = true; // Nobody listens any more.
    }
  }
}
