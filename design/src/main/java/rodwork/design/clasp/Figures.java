package rodwork.design.clasp;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Lengths that a rulebook names, in words without zeros that nobody wrote. */
final class Figures {
  private Figures() {}

  static String mm(double value) {
    return BigDecimal.valueOf(value)
            .setScale(2, RoundingMode.HALF_UP)
            .stripTrailingZeros()
            .toPlainString()
        + " mm";
  }
}
