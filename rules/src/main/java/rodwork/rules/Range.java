package rodwork.rules;

/**
 * Two ends between which a value lies; never turned into one confident number.
 *
 * @param from the lesser end
 * @param to the greater end, may equal the lesser
 */
public record Range(double from, double to) {
  public Range {
    if (!Double.isFinite(from) || !(from <= to)) {
      throw new IllegalArgumentException("range from " + from + " to " + to);
    }
  }

  /** A value that is known. */
  public static Range of(double value) {
    return new Range(value, value);
  }

  public Range plus(Range other) {
    return new Range(from + other.from, to + other.to);
  }

  /** Times a factor that is not negative. */
  public Range times(double factor) {
    return new Range(from * factor, to * factor);
  }
}
