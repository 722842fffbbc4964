package rodwork.design.clasp;

import java.util.List;
import java.util.Optional;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;

/**
 * One requirement of a family.
 *
 * @param id stable name
 * @param when it is asked only where all of these hold
 * @param wants what must hold
 * @param otherwise what follows where it does not
 * @param because one sentence for a person
 * @param source where it comes from
 * @param standing how far that can be trusted
 */
public record Clause(
    String id,
    List<Condition> when,
    Condition wants,
    Consequence otherwise,
    String because,
    String source,
    Standing standing) {
  public Clause {
    when = List.copyOf(when);
  }

  /** What follows where a requirement is not met. */
  public sealed interface Consequence {
    /** Whether it can keep a family from serving; else it warns or is shown at most. */
    default boolean decides() {
      return switch (this) {
        case Warns _, Shows _ -> false;
        case Prepares prepares -> !prepares.orWarns;
        case RulesOut _, Changes _ -> true;
      };
    }

    /** The family does not serve. */
    record RulesOut() implements Consequence {}

    /** The family serves, with a warning that is kept. */
    record Warns() implements Consequence {}

    /** Shown as a finding; changes nothing. */
    record Shows() implements Consequence {}

    /**
     * The mouth can be prepared for it.
     *
     * @param what the preparation, for a person
     * @param by fact that says how much it takes; empty where it is what is missing to the limit
     * @param most more than this cannot be prepared
     * @param orWarns whether the family then serves with a warning; else it does not serve
     */
    record Prepares(String what, Optional<Fact> by, Threshold most, boolean orWarns)
        implements Consequence {}

    /**
     * The clasp itself can be made otherwise; what is too close to call is a warning, for the clasp
     * is made and tried, not cut into a tooth.
     *
     * @param what the change, for a person
     * @param by fact that says what is reached by it
     * @param most above this the change does not help, and the family does not serve
     */
    record Changes(String what, Fact by, Threshold most) implements Consequence {}
  }
}
