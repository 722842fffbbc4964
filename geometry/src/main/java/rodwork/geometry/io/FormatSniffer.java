package rodwork.geometry.io;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;

/** Tells a file's format by its first bytes and its length, never by its name. */
final class FormatSniffer {
  private static final Pattern OBJ_VERTEX = Pattern.compile("(?m)^[ \\t]*+v[ \\t]++[-+.\\dnNiI]");
  private static final Pattern OFF_HEAD = Pattern.compile("(ST)?C?N?4?n?(OFF|off)");
  private static final int TEXT_SAMPLE_BYTES = 4096;
  private static final int SAMPLE_RECORDS = 100;

  /** Beyond, a float is no length of anything in a scan, whatever its unit. */
  private static final float PLAUSIBLE = 1e9f;

  private FormatSniffer() {}

  static boolean isGzip(Input in) {
    return startsWith(in, 0x1F, 0x8B, 8);
  }

  static boolean isZip(Input in) {
    return startsWith(in, 'P', 'K', 3, 4) || startsWith(in, 'P', 'K', 5, 6);
  }

  /** The format of what is to come, or empty if it is none of them; nothing is consumed. */
  static Optional<Format> sniff(Input in) {
    in.fill(Input.WINDOW_BYTES);
    if (startsWith(in, 'g', 'l', 'T', 'F')) {
      return Optional.of(Format.GLB);
    }
    if (startsWith(in, 'p', 'l', 'y') && (byteAt(in, 3) == '\n' || byteAt(in, 3) == '\r')) {
      return Optional.of(Format.PLY);
    }
    if (startsWith(in, 'O', 'F', 'F', ' ', 'B', 'I', 'N', 'A', 'R', 'Y')) {
      return Optional.of(Format.OFF);
    }
    if (hasExactStlLength(in)) {
      return Optional.of(Format.STL_BINARY);
    }
    if (looksLikeText(in)) {
      Optional<Format> text = sniffText(in);
      if (text.isPresent()) {
        return text;
      }
    } else if (looksLikeStl(in)) {
      return Optional.of(Format.STL_BINARY);
    }
    return Optional.empty();
  }

  /** Leaves the mark behind that some editors put before a text. */
  static void skipMark(Input in) {
    if (startsWith(in, 0xEF, 0xBB, 0xBF)) {
      in.advance(3);
    }
  }

  private static Optional<Format> sniffText(Input in) {
    int bytes = Math.min(1 << 16, in.limit() - in.position());
    String start = new String(in.window(), in.position(), bytes, StandardCharsets.ISO_8859_1);
    String text = start.startsWith("\u00EF\u00BB\u00BF") ? start.substring(3) : start;
    String trimmed = text.stripLeading();
    if (trimmed.regionMatches(true, 0, "solid", 0, 5)
        && (trimmed.length() == 5 || trimmed.charAt(5) <= ' ')) {
      return Optional.of(Format.STL_ASCII);
    }
    if (trimmed.startsWith("{")) {
      return Optional.of(Format.GLTF);
    }
    if (OFF_HEAD.matcher(firstWord(text)).matches()) {
      return Optional.of(Format.OFF);
    }
    return OBJ_VERTEX.matcher(text).find() ? Optional.of(Format.OBJ) : Optional.empty();
  }

  /** The first word that is not in a comment. */
  private static String firstWord(String text) {
    return text.lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty() && !line.startsWith("#"))
        .map(line -> line.split("\\s", 2)[0])
        .findFirst()
        .orElse("");
  }

  private static boolean hasExactStlLength(Input in) {
    return in.has(StlBinaryReader.HEADER_BYTES)
        && in.length()
            == StlBinaryReader.HEADER_BYTES + StlBinaryReader.RECORD_BYTES * announced(in);
  }

  private static long announced(Input in) {
    return Integer.toUnsignedLong(in.intLeAt(in.position() + 80));
  }

  /** No control bytes among the first: a binary STL has zeros in its count or its numbers. */
  private static boolean looksLikeText(Input in) {
    int end = Math.min(in.limit(), in.position() + TEXT_SAMPLE_BYTES);
    for (int i = in.position(); i < end; i++) {
      int b = in.window()[i];
      if (b >= 0 && b < ' ' && !(b >= '\t' && b <= '\r')) {
        return false;
      }
    }
    return true;
  }

  /** Nine in ten of the first triangles have plausible coordinates; a count need not be right. */
  private static boolean looksLikeStl(Input in) {
    int from = in.position() + StlBinaryReader.HEADER_BYTES;
    int records = Math.min(SAMPLE_RECORDS, (in.limit() - from) / StlBinaryReader.RECORD_BYTES);
    int plausible = 0;
    for (int r = 0; r < records; r++) {
      boolean all = true;
      boolean any = false;
      for (int k = 3; k < 12 && all; k++) {
        float value =
            Float.intBitsToFloat(in.intLeAt(from + r * StlBinaryReader.RECORD_BYTES + 4 * k));
        float size = Math.abs(value);
        all = value == 0 || (size < PLAUSIBLE && size > 1 / PLAUSIBLE);
        any |= value != 0;
      }
      plausible += all && any ? 1 : 0;
    }
    return records > 0 && 10 * plausible >= 9 * records;
  }

  private static boolean startsWith(Input in, int... bytes) {
    for (int i = 0; i < bytes.length; i++) {
      if (byteAt(in, i) != bytes[i]) {
        return false;
      }
    }
    return true;
  }

  private static int byteAt(Input in, int i) {
    return in.has(i + 1) ? in.window()[in.position() + i] & 0xFF : -1;
  }

  /** The first bytes as a person can read them. */
  static String start(Input in) {
    int count = Math.min(12, in.limit() - in.position());
    String text = new String(in.window(), in.position(), count, StandardCharsets.ISO_8859_1);
    return "\"" + text.replaceAll("[^ -~]", ".") + "\"";
  }
}
