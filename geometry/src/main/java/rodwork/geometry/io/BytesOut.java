package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import rodwork.geometry.Watch;

/** Little-endian numbers to a stream, record by record; mutable. Ends with {@link #flush()}. */
final class BytesOut {
  private static final int BUFFER_BYTES = 1 << 16;

  private final OutputStream out;
  private final Watch watch;
  private final ByteBuffer bytes = ByteBuffer.allocate(BUFFER_BYTES).order(ByteOrder.LITTLE_ENDIAN);

  BytesOut(OutputStream out, Watch watch) {
    this.out = out;
    this.watch = watch;
  }

  /**
   * The buffer, with room for a record.
   *
   * @param recordBytes the record's size
   * @param share how much of the work is done [0 to 1]
   */
  ByteBuffer room(int recordBytes, double share) throws IOException {
    if (bytes.remaining() < recordBytes) {
      watch.check();
      watch.progress("writing", share);
      flush();
    }
    return bytes;
  }

  void flush() throws IOException {
    out.write(bytes.array(), bytes.arrayOffset(), bytes.position());
    bytes.clear();
  }
}
