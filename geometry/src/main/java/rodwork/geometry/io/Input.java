package rodwork.geometry.io;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import rodwork.geometry.Watch;

/**
 * The bytes of a file from front to back through one window, with a look ahead; mutable.
 *
 * <p>Readers of large records work on {@link #window()} itself between {@link #position()} and
 * {@link #limit()}, after {@link #has} has made sure of what they need.
 */
final class Input implements Closeable {
  /** Window [bytes]: longer than any look ahead, short enough to stay in the cache. */
  static final int WINDOW_BYTES = 1 << 18;

  private static final VarHandle INT_LE =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

  private final String name;
  private final InputStream in;
  private final long length;
  private final Watch watch;
  private final byte[] window = new byte[WINDOW_BYTES];
  private int position;
  private int limit;
  private long before;
  private boolean ended;

  /**
   * @param name what messages call the file
   * @param length bytes to come in all; −1 where unknown
   */
  Input(String name, InputStream in, long length, Watch watch) {
    this.name = name;
    this.in = in;
    this.length = length;
    this.watch = watch;
  }

  String name() {
    return name;
  }

  Watch watch() {
    return watch;
  }

  byte[] window() {
    return window;
  }

  int position() {
    return position;
  }

  int limit() {
    return limit;
  }

  /** How many bytes were consumed. */
  long offset() {
    return before + position;
  }

  /** Bytes in all where that is known, by the source or because the end was seen; else −1. */
  long length() {
    return ended ? before + limit : length;
  }

  /** Consumes bytes that {@link #has} has shown to be there. */
  void advance(int bytes) {
    position += bytes;
  }

  /**
   * Whether so many bytes are still to come; they are then in the window.
   *
   * @param bytes at most {@link #WINDOW_BYTES}
   */
  boolean has(int bytes) {
    return limit - position >= bytes || fill(bytes) >= bytes;
  }

  /**
   * Reads on until so many bytes are in the window or the file ends; returns how many there are.
   */
  int fill(int bytes) {
    if (limit - position < bytes && !ended) {
      watch.check();
      System.arraycopy(window, position, window, 0, limit - position);
      before += position;
      limit -= position;
      position = 0;
      try {
        while (limit < bytes) {
          int got = in.read(window, limit, window.length - limit);
          if (got < 0) {
            ended = true;
            break;
          }
          limit += got;
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      if (length > 0) {
        watch.progress("reading", Math.min(1, (double) (before + limit) / length));
      }
    }
    return limit - position;
  }

  /** The next byte as 0 to 255, consumed; −1 at the end. */
  int read() {
    return has(1) ? window[position++] & 0xFF : -1;
  }

  /** The next byte as 0 to 255, left in place; −1 at the end. */
  int peek() {
    return has(1) ? window[position] & 0xFF : -1;
  }

  /** A little-endian int at a place in the window. */
  int intLeAt(int place) {
    return (int) INT_LE.get(window, place);
  }

  /** What is still to come, as a stream; it and this consume from the same place. */
  InputStream asStream() {
    return new InputStream() {
      @Override
      public int read() {
        return Input.this.read();
      }

      @Override
      public int read(byte[] into, int from, int bytes) {
        if (bytes == 0) {
          return 0;
        }
        if (!has(1)) {
          return -1;
        }
        int got = Math.min(bytes, limit - position);
        System.arraycopy(window, position, into, from, got);
        position += got;
        return got;
      }

      @Override
      public int available() {
        return limit - position;
      }
    };
  }

  @Override
  public void close() {
    try {
      in.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
