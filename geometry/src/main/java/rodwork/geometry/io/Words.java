package rodwork.geometry.io;

import java.nio.charset.StandardCharsets;

/**
 * The words of a text file, line by line; mutable.
 *
 * <p>Words are parted by blanks; lines end with LF, CR or both. Nothing is read past the end of the
 * present word, so that binary data may follow a line. A word keeps its first {@value #MAX_WORD}
 * bytes, which is more than any number has.
 */
final class Words {
  static final int MAX_WORD = 400;

  private final Input in;
  private final int comment;
  private final byte[] word = new byte[MAX_WORD];
  private int length;
  private long line = 1;

  /**
   * @param comment the byte that turns the rest of a line into a comment; −1 for none
   */
  Words(Input in, int comment) {
    this.in = in;
    this.comment = comment;
  }

  /** The number of the present line, counted from 1. */
  long line() {
    return line;
  }

  /** The next word of the present line; false at its end. */
  boolean next() {
    int c = in.peek();
    while (c == ' ' || c == '\t' || c == 0x0B || c == '\f') {
      in.advance(1);
      c = in.peek();
    }
    if (c == comment && c >= 0) {
      while (c >= 0 && c != '\n' && c != '\r') {
        in.advance(1);
        c = in.peek();
      }
    }
    length = 0;
    while (c > ' ' || (c >= 0 && c != ' ' && !(c >= '\t' && c <= '\r'))) {
      if (length < MAX_WORD) {
        word[length++] = (byte) c;
      }
      in.advance(1);
      c = in.peek();
    }
    return length > 0;
  }

  /** Whether nothing stands behind the present word. */
  boolean atEnd() {
    return in.peek() < 0;
  }

  /** Leaves the rest of the present line and goes to the next; false at the end of the file. */
  boolean nextLine() {
    int c = in.read();
    while (c >= 0 && c != '\n' && c != '\r') {
      c = in.read();
    }
    if (c == '\r' && in.peek() == '\n') {
      in.advance(1);
    }
    line++;
    return c >= 0 && in.peek() >= 0;
  }

  /** The next word in this line or a later one; false at the end of the file. */
  boolean nextAnywhere() {
    while (!next()) {
      if (!nextLine()) {
        return false;
      }
    }
    return true;
  }

  /** Whether the present word is this one, upper and lower case alike. */
  boolean is(String lowerCase) {
    if (length != lowerCase.length()) {
      return false;
    }
    for (int i = 0; i < length; i++) {
      int c = word[i];
      if ((c >= 'A' && c <= 'Z' ? c + 32 : c) != lowerCase.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** The byte at a place of the present word; −1 behind its end. */
  int at(int place) {
    return place < length ? word[place] & 0xFF : -1;
  }

  String text() {
    return new String(word, 0, length, StandardCharsets.UTF_8);
  }

  /** The present word as a number; NaN and infinity may be spelt in the usual ways. */
  double number() {
    try {
      if (length < MAX_WORD) {
        return Decimal.parse(word, length);
      }
    } catch (NumberFormatException e) {
      // told below, with its place
    }
    throw IoProblem.NO_NUMBER.refusal(in.name(), line, text());
  }

  /** The present word as a whole number. */
  long whole() {
    int i = length > 0 && (word[0] == '-' || word[0] == '+') ? 1 : 0;
    if (i == length || length - i > 18) {
      throw IoProblem.NO_NUMBER.refusal(in.name(), line, text());
    }
    long value = 0;
    for (int k = i; k < length; k++) {
      if (word[k] < '0' || word[k] > '9') {
        throw IoProblem.NO_NUMBER.refusal(in.name(), line, text());
      }
      value = 10 * value + (word[k] - '0');
    }
    return word[0] == '-' ? -value : value;
  }

  /** The next word of this line as a number; refuses where the line ends before. */
  double nextNumber(String what) {
    if (!next()) {
      throw IoProblem.LINE_TOO_SHORT.refusal(in.name(), line, what);
    }
    return number();
  }
}
