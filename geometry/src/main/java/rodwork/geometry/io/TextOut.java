package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import rodwork.geometry.Watch;

/**
 * ASCII text to a stream, piece by piece; mutable. Close nothing, but {@link #flush()} at the end.
 */
final class TextOut {
  private static final int FLUSH_CHARS = 1 << 16;

  private final OutputStream out;
  private final Watch watch;
  private final StringBuilder text = new StringBuilder(FLUSH_CHARS + 1024);

  TextOut(OutputStream out, Watch watch) {
    this.out = out;
    this.watch = watch;
  }

  TextOut put(String piece) {
    text.append(piece);
    return this;
  }

  TextOut put(long number) {
    text.append(number);
    return this;
  }

  /** The shortest decimal that reads back as the same double. */
  TextOut put(double number) {
    if (number == Math.rint(number) && Math.abs(number) < 1e15) {
      text.append((long) number); // 3 for 3.0
    } else {
      text.append(number);
    }
    return this;
  }

  /** Ends a record; now and then what has gathered goes out. */
  void end(double share) throws IOException {
    if (text.length() >= FLUSH_CHARS) {
      watch.check();
      watch.progress("writing", share);
      flush();
    }
  }

  void flush() throws IOException {
    out.write(text.toString().getBytes(StandardCharsets.US_ASCII));
    text.setLength(0);
  }
}
