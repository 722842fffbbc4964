package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalTest {
  private static double parse(String text) {
    byte[] word = text.getBytes(StandardCharsets.ISO_8859_1);
    return Decimal.parse(word, word.length);
  }

  /** Truth: the library's own reader of decimals. */
  @Test
  void agreesWithTheLibraryToTheLastBit() {
    Random random = new Random(3);
    for (int i = 0; i < 200_000; i++) {
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(40) - 20);
      String text =
          switch (i % 4) {
            case 0 -> Double.toString(value);
            case 1 -> Float.toString((float) value);
            case 2 -> String.format(Locale.ROOT, "%.6e", value);
            default -> String.format(Locale.ROOT, "%+.5f", value);
          };
      if (parse(text) != Double.parseDouble(text)) {
        fail("seed 3: " + text + " was read as " + parse(text));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "+7",
        ".5",
        "5.",
        "-.5e1",
        "1E5",
        "1e+05",
        "1e-300",
        "1e400",
        "0.1",
        "00000000000000000000001.5",
        "9007199254740993",
        "123456789012345678901234567890",
        "0.000000000000000000000000000012345",
        "4.9e-324",
        "1e22",
        "1e23",
        "8.5e-23"
      })
  void spellings(String text) {
    assertThat(parse(text)).isEqualTo(Double.parseDouble(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "-", "+", ".", "-.", "e5", ".e5", "1e", "1e+", "1.2.3", "1,5", "0x10", "1f", "--1",
        "1-", "1e5x", "é"
      })
  void noNumbers(String text) {
    assertThatThrownBy(() -> parse(text)).isInstanceOf(NumberFormatException.class);
  }

  @Test
  void notANumberAndInfinity() {
    for (String text : new String[] {"nan", "NaN", "-nan", "nan(ind)", "1.#QNAN", "-1.#IND00"}) {
      assertThat(parse(text)).isNaN();
    }
    assertThat(parse("inf")).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(parse("-Infinity")).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(parse("1.#INF")).isEqualTo(Double.POSITIVE_INFINITY);
  }
}
