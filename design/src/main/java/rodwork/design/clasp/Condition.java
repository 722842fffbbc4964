package rodwork.design.clasp;

import java.util.List;
import java.util.function.Function;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;

/**
 * Something a fact must be.
 *
 * <p>All of a list must hold; what is not known makes the whole not known unless another part
 * fails.
 */
public sealed interface Condition {
  /** The fact is one of the words; yes and no are words. */
  record Is(Fact fact, List<String> words) implements Condition {
    public Is {
      words = List.copyOf(words);
      if (words.isEmpty() || !fact.choices().containsAll(words)) {
        throw new IllegalArgumentException(
            fact.key() + " is one of " + fact.choices() + ", not " + words);
      }
    }

    @Override
    public Limit limit(Function<Fact, Reading> facts) {
      return new Limit.OneOf(words);
    }
  }

  /** The fact is at least a threshold. */
  record AtLeast(Fact fact, Threshold threshold) implements Condition {
    public AtLeast {
      sameUnit(fact, threshold);
    }

    @Override
    public Limit limit(Function<Fact, Reading> facts) {
      return new Limit.Least(threshold.value(), threshold.unit());
    }
  }

  /** The fact is at most a threshold. */
  record AtMost(Fact fact, Threshold threshold) implements Condition {
    public AtMost {
      sameUnit(fact, threshold);
    }

    @Override
    public Limit limit(Function<Fact, Reading> facts) {
      return new Limit.Most(threshold.value(), threshold.unit());
    }
  }

  /** The fact is at least as great as another one; not known where that is not. */
  record AtLeastFact(Fact fact, Fact other) implements Condition {
    public AtLeastFact {
      if (fact.unit().isEmpty() || !fact.unit().equals(other.unit())) {
        throw new IllegalArgumentException(
            fact.key() + " and " + other.key() + " are not two numbers of one unit");
      }
    }

    @Override
    public Limit limit(Function<Fact, Reading> facts) {
      return facts.apply(other) instanceof Reading.Measured m
          ? new Limit.Least(m.value(), m.unit())
          : new Limit.Least(Double.POSITIVE_INFINITY, fact.unit());
    }

    @Override
    public Verdict judge(Function<Fact, Reading> facts) {
      return facts.apply(other) instanceof Reading.Measured
          ? Condition.super.judge(facts)
          : Verdict.NOT_KNOWN;
    }
  }

  Fact fact();

  /** What the fact is held against. */
  Limit limit(Function<Fact, Reading> facts);

  /** How a fact stands to it. */
  default Verdict judge(Function<Fact, Reading> facts) {
    return limit(facts).judge(facts.apply(fact()));
  }

  /** How a list stands: not met where one is not, else undecided where one is, else met. */
  static Verdict all(List<Condition> conditions, Function<Fact, Reading> facts) {
    Verdict sum = Verdict.MET;
    for (Condition c : conditions) {
      Verdict v = c.judge(facts);
      if (v == Verdict.NOT_MET) {
        return v;
      }
      if (!v.decided()) {
        sum = v;
      }
    }
    return sum;
  }

  private static void sameUnit(Fact fact, Threshold threshold) {
    if (!fact.unit().equals(threshold.unit())) {
      throw new IllegalArgumentException(
          fact.key()
              + " is in "
              + (fact.unit().isEmpty() ? "words" : fact.unit())
              + ", "
              + threshold.id()
              + " in "
              + threshold.unit());
    }
  }
}
