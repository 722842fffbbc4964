package rodwork.geometry.intake;

import java.util.Locale;

/** Fills the braces of a text with values, in order. */
final class Phrase {
  private Phrase() {}

  /**
   * The text with its values: whole numbers grouped by thousands, others as {@link #number} has
   * them.
   *
   * @throws IllegalArgumentException if there are more or fewer values than braces
   */
  static String fill(String template, Object... values) {
    StringBuilder text = new StringBuilder();
    int from = 0;
    int used = 0;
    for (int open = template.indexOf('{'); open >= 0; open = template.indexOf('{', from)) {
      if (used == values.length) {
        throw new IllegalArgumentException("too few values for: " + template);
      }
      text.append(template, from, open).append(shown(values[used++]));
      from = template.indexOf('}', open) + 1;
    }
    if (used != values.length) {
      throw new IllegalArgumentException("too many values for: " + template);
    }
    return text.append(template.substring(from)).toString();
  }

  private static String shown(Object value) {
    if (value instanceof Long || value instanceof Integer) {
      return String.format(Locale.ROOT, "%,d", ((Number) value).longValue());
    }
    return value instanceof Double number ? number(number) : value.toString();
  }

  /** Three significant digits or so: 0.18, 1.35, 77.2, 5,120; tiny and huge ones by powers. */
  static String number(double value) {
    double size = Math.abs(value);
    if (size != 0 && (size < 0.001 || size >= 1e9)) {
      return String.format(Locale.ROOT, "%.2e", value);
    }
    String format = size < 0.1 ? "%.3f" : size < 10 ? "%.2f" : size < 1000 ? "%.1f" : "%,.0f";
    return String.format(Locale.ROOT, format, value);
  }
}
