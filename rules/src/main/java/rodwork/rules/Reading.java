package rodwork.rules;

/**
 * What was found where something was looked for: a number, a bound, a word, yes or no, or nothing.
 *
 * <p>What is not known stays so; nothing here turns it into a convenient value.
 */
public sealed interface Reading {
  /**
   * A measured number.
   *
   * @param value in the unit
   * @param uncertainty half width within which the true value is held to lie, in the unit, not
   *     negative
   * @param unit {@code mm}, {@code degrees}, {@code 1} …
   */
  record Measured(double value, double uncertainty, String unit) implements Reading {
    public Measured {
      if (!Double.isFinite(value) || !(uncertainty >= 0) || unit.isBlank()) {
        throw new IllegalArgumentException(value + " ± " + uncertainty + " " + unit);
      }
    }

    @Override
    public String words() {
      return Words.measured(value, uncertainty, unit);
    }
  }

  /**
   * A number of which only a lower bound is known: a depth beyond its cap, a bulge that has not
   * begun where the scan ends.
   *
   * @param value the true value is at least this
   */
  record AtLeast(double value, String unit) implements Reading {
    public AtLeast {
      if (!Double.isFinite(value) || unit.isBlank()) {
        throw new IllegalArgumentException("at least " + value + " " + unit);
      }
    }

    @Override
    public String words() {
      return "at least " + Words.measured(value, 0, unit);
    }
  }

  /** One of a few words, such as the class of a survey line. */
  record Word(String word) implements Reading {
    public Word {
      if (word.isBlank()) {
        throw new IllegalArgumentException("an empty word");
      }
    }

    @Override
    public String words() {
      return word;
    }
  }

  /** Yes or no. */
  record Said(boolean yes) implements Reading {
    @Override
    public String words() {
      return yes ? "yes" : "no";
    }
  }

  /**
   * The place that would have to be read does not exist, which is an answer and never a pass: the
   * vestibule ends before it.
   */
  record NoRoom(String why) implements Reading {
    @Override
    public String words() {
      return "no room: " + why;
    }
  }

  /** Not known, and why: not captured by the scan, not yet asked. */
  record NotKnown(String why) implements Reading {
    @Override
    public String words() {
      return "not known: " + why;
    }
  }

  /** For a person. */
  String words();

  static Reading mm(double value, double uncertainty) {
    return new Measured(value, uncertainty, "mm");
  }

  static Reading degrees(double value, double uncertainty) {
    return new Measured(value, uncertainty, "degrees");
  }

  static Reading yes(boolean yes) {
    return new Said(yes);
  }
}
