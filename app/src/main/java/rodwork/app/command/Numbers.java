package rodwork.app.command;

import picocli.CommandLine.TypeConversionException;

/** Reads lists of numbers with commas between them. */
final class Numbers {
  private Numbers() {}

  /**
   * Reads numbers.
   *
   * @param count how many there must be; 0 for one or more
   * @param wanted what was wanted, in words, for the message
   */
  static double[] read(String text, int count, String wanted) {
    String[] parts = text.split(",", -1);
    double[] numbers = new double[parts.length];
    for (int i = 0; i < parts.length; i++) {
      try {
        numbers[i] = Double.parseDouble(parts[i].strip());
      } catch (NumberFormatException _) {
        throw new TypeConversionException("'" + text + "' is not " + wanted);
      }
      if (!Double.isFinite(numbers[i])) {
        throw new TypeConversionException("'" + text + "' is not " + wanted);
      }
    }
    if (count > 0 && numbers.length != count) {
      throw new TypeConversionException("'" + text + "' is not " + wanted);
    }
    return numbers;
  }
}
