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
  private static final Pattern NOT_A_NUMBER =
      Pattern.compile("[+-]?(nan.*|1\\.#(qnan|snan|ind).*)");
  private static final Pattern INFINITE = Pattern.compile("[+-]?(inf|infinity|1\\.#inf.*)");

  private static final double[] POWERS_OF_TEN = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  private static final int MAX_EXACT_DIGITS = 15;

  /** Beyond, every double is 0 or infinite; stops the sum of an endless exponent. */
  private static final int MAX_EXPONENT = 100_000;

  private Decimal() {}

  /**
   * The number that a word spells; NaN and infinity may be spelt in the usual ways.
   *
   * @throws NumberFormatException if it is none
   */
  static double parse(byte[] word, int length) {
    int i = length > 0 && isSign(word[0]) ? 1 : 0;
    int figures = 0;
    int significant = 0;
    long digits = 0;
    int scale = 0;
    boolean point = false;
    for (; i < length; i++) {
      int c = word[i];
      if (c >= '0' && c <= '9') {
        figures++;
        significant += significant > 0 || c > '0' ? 1 : 0;
        digits = 10 * digits + (c - '0'); // overflows only where it is not used
        scale -= point ? 1 : 0;
      } else if (c == '.' && !point) {
        point = true;
      } else {
        break;
      }
    }
    if (figures == 0) {
      return named(word, length);
    }
    if (i < length) {
      int from = i + 1 < length && isSign(word[i + 1]) ? i + 2 : i + 1;
      if ((word[i] != 'e' && word[i] != 'E') || from == length) {
        return named(word, length);
      }
      int exponent = 0;
      for (int k = from; k < length; k++) {
        if (word[k] < '0' || word[k] > '9') {
          return named(word, length);
        }
        exponent = Math.min(MAX_EXPONENT, 10 * exponent + (word[k] - '0'));
      }
      scale += word[from - 1] == '-' ? -exponent : exponent;
    }
    if (significant > MAX_EXACT_DIGITS || scale < -22 || scale > 22) {
      return Double.parseDouble(text(word, length));
    }
    double value = scale < 0 ? digits / POWERS_OF_TEN[-scale] : digits * POWERS_OF_TEN[scale];
    return word[0] == '-' ? -value : value;
  }

  private static boolean isSign(byte c) {
    return c == '-' || c == '+';
  }

  private static String text(byte[] word, int length) {
    return new String(word, 0, length, StandardCharsets.ISO_8859_1);
  }

  private static double named(byte[] word, int length) {
    String lower = text(word, length).toLowerCase(Locale.ROOT);
    if (NOT_A_NUMBER.matcher(lower).matches()) {
      return Double.NaN;
    }
    if (INFINITE.matcher(lower).matches()) {
      return lower.startsWith("-") ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    throw new NumberFormatException(lower);
  }
}
