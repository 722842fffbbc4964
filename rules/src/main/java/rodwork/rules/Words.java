package rodwork.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers for a person, with the digits that mean something in their unit. */
final class Words {
  private Words() {}

  /**
   * A value, such as {@code 1.82 ± 0.04 mm}, {@code 134 ± 37 %} for a share, {@code 3} for a count.
   *
   * @param uncertainty 0: none is told
   */
  static String measured(double value, double uncertainty, String unit) {
    String one = "%." + digits(unit) + "f";
    double factor = factor(unit);
    String figure = String.format(Locale.ROOT, one, factor * value);
    if (uncertainty > 0) {
      figure += " ± " + String.format(Locale.ROOT, one, factor * uncertainty);
    }
    return figure + suffix(unit);
  }

  /** A limit, without zeros that nobody wrote; it may itself be measured. */
  static String limit(double value, String unit) {
    if (Double.isInfinite(value)) {
      return "∞" + suffix(unit);
    }
    return BigDecimal.valueOf(factor(unit) * value)
            .setScale(Math.max(digits(unit), 1), RoundingMode.HALF_UP)
            .stripTrailingZeros()
            .toPlainString()
        + suffix(unit);
  }

  private static int digits(String unit) {
    return switch (unit) {
      case "1", "count" -> 0;
      case "degrees", "N" -> 1;
      default -> 2;
    };
  }

  private static double factor(String unit) {
    return unit.equals("1") ? 100 : 1;
  }

  private static String suffix(String unit) {
    return switch (unit) {
      case "1" -> " %";
      case "count" -> "";
      case "degrees" -> "°";
      default -> " " + unit;
    };
  }
}
