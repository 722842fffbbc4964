package rodwork.geometry.io;

import java.nio.charset.StandardCharsets;

/** Tells a file's format by its first bytes and its length, never by its name. */
final class FormatSniffer {
  private FormatSniffer() {}

  /** The format of what is to come; nothing is consumed. */
  static Format sniff(Input in) {
    if (!in.has(1)) {
      throw IoProblem.EMPTY.refusal(in.name());
    }
    in.fill(Input.WINDOW_BYTES);
    if (in.has(StlBinaryReader.HEADER_BYTES)) {
      long announced = Integer.toUnsignedLong(in.intLeAt(in.position() + 80));
      if (in.length() == StlBinaryReader.HEADER_BYTES + StlBinaryReader.RECORD_BYTES * announced) {
        return Format.STL_BINARY;
      }
    }
    throw IoProblem.UNKNOWN.refusal(in.name(), start(in));
  }

  /** The first bytes as a person can read them. */
  private static String start(Input in) {
    int count = Math.min(12, in.limit() - in.position());
    String text = new String(in.window(), in.position(), count, StandardCharsets.ISO_8859_1);
    return "\"" + text.replaceAll("[^ -~]", ".") + "\"";
  }
}
