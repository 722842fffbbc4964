package rodwork.geometry.io;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongSupplier;

/**
 * An unpacked stream that ends in a refusal when it swells beyond what a mesh packs to.
 *
 * <p>Limits: {@value #MAX_BYTES} bytes in all (about 85 million triangles of binary STL), and
 * {@value #MAX_SWELLING} times the packed size once {@value #FREE_BYTES} bytes are passed. Real
 * scans pack to a half or a fifth, text of round numbers to a thirtieth.
 */
final class Unpacked extends FilterInputStream {
  static final long MAX_BYTES = 4L << 30;
  static final int MAX_SWELLING = 200;
  static final long FREE_BYTES = 64L << 20;

  private final String name;
  private final LongSupplier packedBytes;
  private long bytes;

  /**
   * @param packedBytes how many packed bytes there are, or were taken so far
   */
  Unpacked(String name, InputStream in, LongSupplier packedBytes) {
    super(in);
    this.name = name;
    this.packedBytes = packedBytes;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    int got = in.read(into, from, length);
    bytes += Math.max(0, got);
    if (bytes > MAX_BYTES) {
      throw IoProblem.UNPACKED_TOO_LARGE.refusal(name, MAX_BYTES >> 20);
    }
    if (bytes > FREE_BYTES && bytes / MAX_SWELLING > packedBytes.getAsLong()) {
      throw IoProblem.PACKED_BOMB.refusal(name, bytes >> 20, packedBytes.getAsLong(), MAX_SWELLING);
    }
    return got;
  }
}
