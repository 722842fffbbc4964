package rodwork.geometry.io;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Reads decimal numbers, correctly rounded.
 *
 * <p>A decimal of at most 15 digits and a power of ten up to 22 are both exact doubles, so one
 * multiplication or division rounds once (W. D. Clinger, How to read floating point numbers
 * accurately, PLDI 1990, section 5). All else goes the library's way, which is five times slower.
 */
final class Decimal {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d++\\.?\\d*+|\\.\\d++)([eE][+-]?\\d++)?");
  private static final Pattern NOT_A_NUMBER =
      Pattern.compile("[+-]?(nan.*|1\\.#(qnan|snan|ind).*)");
  private static final Pattern INFINITE = Pattern.compile("[+-]?(inf|infinity|1\\.#inf.*)");

  private static final double[] POWERS_OF_TEN = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  private Decimal() {}

  /**
   * The number that a word spells; NaN and infinity may be spelt in the usual ways.
   *
   * @throws NumberFormatException if it is none
   */
  static double parse(byte[] word, int length) {
    int i = 0;
    boolean minus = false;
    if (length > 0 && (word[0] == '-' || word[0] == '+')) {
      minus = word[0] == '-';
      i = 1;
    }
    long digits = 0;
    int count = 0;
    int scale = 0;
    boolean point = false;
    for (; i < length; i++) {
      int c = word[i];
      if (c >= '0' && c <= '9') {
        digits = 10 * digits + (c - '0');
        count += digits > 0 ? 1 : 0;
        if (count > 15) {
          return slow(word, length);
        }
        scale -= point ? 1 : 0;
      } else if (c == '.' && !point) {
        point = true;
      } else {
        break;
      }
    }
    boolean noDigit = i == 0 || (word[i - 1] < '0' && (i == 1 || word[i - 2] < '0'));
    if (noDigit) {
      return slow(word, length);
    }
    if (i < length) {
      int exponent = word[i] == 'e' || word[i] == 'E' ? shortExponent(word, i + 1, length) : 9999;
      if (exponent == 9999) {
        return slow(word, length);
      }
      scale += exponent;
    }
    if (scale < -22 || scale > 22) {
      return slow(word, length);
    }
    double value = scale < 0 ? digits / POWERS_OF_TEN[-scale] : digits * POWERS_OF_TEN[scale];
    return minus ? -value : value;
  }

  /** An exponent of one to three digits from here to the word's end; 9999 if it is none. */
  private static int shortExponent(byte[] word, int from, int length) {
    int i = from;
    boolean minus = false;
    if (i < length && (word[i] == '-' || word[i] == '+')) {
      minus = word[i] == '-';
      i++;
    }
    if (i == length || length - i > 3) {
      return 9999;
    }
    int exponent = 0;
    for (; i < length; i++) {
      if (word[i] < '0' || word[i] > '9') {
        return 9999;
      }
      exponent = 10 * exponent + (word[i] - '0');
    }
    return minus ? -exponent : exponent;
  }

  private static double slow(byte[] word, int length) {
    String text = new String(word, 0, length, StandardCharsets.ISO_8859_1);
    if (NUMBER.matcher(text).matches()) {
      return Double.parseDouble(text);
    }
    String lower = text.toLowerCase(Locale.ROOT);
    if (NOT_A_NUMBER.matcher(lower).matches()) {
      return Double.NaN;
    }
    if (INFINITE.matcher(lower).matches()) {
      return lower.startsWith("-") ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    throw new NumberFormatException(text);
  }
}
