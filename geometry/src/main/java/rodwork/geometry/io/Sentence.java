package rodwork.geometry.io;

import java.util.Locale;

/** Sentences for people, with values in the place of braces. */
final class Sentence {
  private Sentence() {}

  /**
   * Fills a text such as {@code "{file}: {count} triangles."}.
   *
   * @param values one for each brace, in order; whole numbers are grouped by thousands
   */
  static String of(String template, Object... values) {
    StringBuilder text = new StringBuilder();
    int from = 0;
    int used = 0;
    for (int open = template.indexOf('{'); open >= 0; open = template.indexOf('{', from)) {
      text.append(template, from, open).append(shown(values[used++]));
      from = template.indexOf('}', open) + 1;
    }
    if (used != values.length) {
      throw new IllegalArgumentException(
          "\"" + template + "\" takes " + used + " values, not " + values.length);
    }
    return text.append(template.substring(from)).toString();
  }

  private static String shown(Object value) {
    return value instanceof Long || value instanceof Integer
        ? String.format(Locale.ROOT, "%,d", ((Number) value).longValue())
        : value.toString();
  }
}
