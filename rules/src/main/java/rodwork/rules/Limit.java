package rodwork.rules;

import java.util.List;

/** What a reading is held against. */
public sealed interface Limit {
  /** At least the value, in the unit. */
  record Least(double value, String unit) implements Limit {
    @Override
    public String words() {
      // A limit that is itself a reading, and not known: nothing is sure to reach it.
      return Double.isInfinite(value)
          ? "as much as another reading, which is not known"
          : "at least " + Words.limit(value, unit);
    }
  }

  /** At most the value, in the unit. */
  record Most(double value, String unit) implements Limit {
    @Override
    public String words() {
      return "at most " + Words.limit(value, unit);
    }
  }

  /** One of the words; yes and no are words too. */
  record OneOf(List<String> choices) implements Limit {
    public OneOf {
      choices = List.copyOf(choices);
    }

    @Override
    public String words() {
      return String.join(" or ", choices);
    }
  }

  /** For a person. */
  String words();

  /**
   * Holds a reading against the limit. A number within its uncertainty of the limit is too close to
   * call; {@link Reading.NoRoom} is never met.
   *
   * @throws IllegalArgumentException if the reading is of another kind or unit than the limit
   */
  default Verdict judge(Reading reading) {
    return switch (reading) {
      case Reading.NotKnown _ -> Verdict.NOT_KNOWN;
      case Reading.NoRoom _ -> Verdict.NOT_MET;
      case Reading.Measured n -> judge(n);
      case Reading.AtLeast bound -> judge(bound);
      case Reading.Word word -> judge(word.word());
      case Reading.Said said -> judge(said.words());
    };
  }

  private Verdict judge(Reading.Measured n) {
    double above =
        switch (this) {
          case Least least -> n.value() - in(n.unit(), least.unit, least.value);
          case Most most -> in(n.unit(), most.unit, most.value) - n.value();
          case OneOf _ -> throw mismatch(n);
        };
    // Rounding must not turn a value that equals its limit into a miss.
    double rounding = 1e-9;
    if (Math.abs(above) <= rounding) {
      return n.uncertainty() > 0 ? Verdict.TOO_CLOSE_TO_CALL : Verdict.MET;
    }
    if (Math.abs(above) < n.uncertainty()) {
      return Verdict.TOO_CLOSE_TO_CALL;
    }
    return above > 0 ? Verdict.MET : Verdict.NOT_MET;
  }

  private Verdict judge(Reading.AtLeast bound) {
    return switch (this) {
      case Least least ->
          bound.value() >= in(bound.unit(), least.unit, least.value)
              ? Verdict.MET
              : Verdict.NOT_KNOWN;
      case Most most ->
          bound.value() > in(bound.unit(), most.unit, most.value)
              ? Verdict.NOT_MET
              : Verdict.NOT_KNOWN;
      case OneOf _ -> throw mismatch(bound);
    };
  }

  private Verdict judge(String word) {
    if (this instanceof OneOf oneOf) {
      return oneOf.choices.contains(word) ? Verdict.MET : Verdict.NOT_MET;
    }
    throw new IllegalArgumentException(words() + " cannot judge the word " + word);
  }

  private IllegalArgumentException mismatch(Reading reading) {
    return new IllegalArgumentException(words() + " cannot judge " + reading.words());
  }

  private static double in(String unit, String limitUnit, double value) {
    if (!unit.equals(limitUnit)) {
      throw new IllegalArgumentException("a reading in " + unit + ", its limit in " + limitUnit);
    }
    return value;
  }
}
