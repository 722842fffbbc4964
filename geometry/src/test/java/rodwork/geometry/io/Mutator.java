package rodwork.geometry.io;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Damages files as transfers, editors, careless programs and malice do. */
final class Mutator {
  private static final String[] WORDS = {
    "-1", "0", "1", "4294967295", "99999999999999999999", "1e999", "nan", "-inf", "1,5", "", "\n",
    "#", "\"", "}", "]", "<", "/>", "vertex", "facet", "endsolid", "f 1 2 3 4 1 2", "property list"
  };
  private static final int[] NUMBERS = {
    0, 1, -1, Integer.MAX_VALUE, Integer.MIN_VALUE, 0x7FC00000, 0x7F800000, 1 << 24, 255, 65535
  };

  private final Random random;
  private final List<Map.Entry<String, byte[]>> samples = List.copyOf(Samples.all().entrySet());

  Mutator(long seed) {
    random = new Random(seed);
  }

  /** The next damaged file. */
  byte[] next() {
    return switch (random.nextInt(10)) {
      // Behind a checksum little damage gets through, so the inside is damaged and packed anew.
      case 0 -> Samples.threeMf(text(damaged(Samples.bytes(Samples.threeMfModel()))));
      case 1 ->
          Samples.glb(text(damaged(Samples.bytes(Samples.gltfJson("")))), Samples.gltfBuffer());
      case 2 -> Samples.glb(Samples.gltfJson(""), damaged(Samples.gltfBuffer()));
      case 3 -> Samples.gzip(damaged(sample()));
      case 4 -> Samples.zip("scan", damaged(sample()));
      default -> damaged(sample());
    };
  }

  private byte[] sample() {
    return samples.get(random.nextInt(samples.size())).getValue();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  private byte[] damaged(byte[] content) {
    byte[] bytes = content.clone();
    for (int times = 1 + random.nextInt(3); times > 0 && bytes.length > 0; times--) {
      bytes = once(bytes);
    }
    return bytes;
  }

  private byte[] once(byte[] bytes) {
    int at = random.nextInt(bytes.length);
    switch (random.nextInt(9)) {
      case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> bytes[at] = (byte) random.nextInt(256);
      case 2 -> putNumber(bytes, Math.max(0, Math.min(at, bytes.length - 4)));
      case 3 -> {
        return Arrays.copyOf(bytes, at);
      }
      case 4 -> {
        int to = Math.min(bytes.length, at + 1 + random.nextInt(40));
        return spliced(bytes, at, new byte[0], to);
      }
      case 5 -> {
        int to = Math.min(bytes.length, at + 1 + random.nextInt(200));
        return spliced(bytes, at, Arrays.copyOfRange(bytes, at, to), at);
      }
      case 6 -> {
        return spliced(bytes, at, Samples.bytes(WORDS[random.nextInt(WORDS.length)]), at);
      }
      case 7 -> {
        return withAnotherNumber(bytes, at);
      }
      default -> {
        byte[] other = sample();
        int from = random.nextInt(other.length);
        return spliced(bytes, at, Arrays.copyOfRange(other, from, other.length), bytes.length);
      }
    }
    return bytes;
  }

  private void putNumber(byte[] bytes, int at) {
    int number = NUMBERS[random.nextInt(NUMBERS.length)];
    for (int i = 0; i < 4 && at + i < bytes.length; i++) {
      bytes[at + i] = (byte) (number >>> (8 * i));
    }
  }

  /** Puts another word in the place of the first run of digits from here on. */
  private byte[] withAnotherNumber(byte[] bytes, int at) {
    int from = at;
    while (from < bytes.length && !digit(bytes[from])) {
      from++;
    }
    int to = from;
    while (to < bytes.length && digit(bytes[to])) {
      to++;
    }
    String word =
        random.nextBoolean()
            ? WORDS[random.nextInt(WORDS.length)]
            : Integer.toString(random.nextInt(12));
    return spliced(bytes, from, Samples.bytes(word), to);
  }

  private static boolean digit(byte b) {
    return b >= '0' && b <= '9';
  }

  /** The bytes up to {@code at}, then others, then the bytes from {@code on}. */
  private static byte[] spliced(byte[] bytes, int at, byte[] middle, int on) {
    byte[] out = Arrays.copyOf(bytes, at + middle.length + bytes.length - on);
    System.arraycopy(middle, 0, out, at, middle.length);
    System.arraycopy(bytes, on, out, at + middle.length, bytes.length - on);
    return out;
  }
}
