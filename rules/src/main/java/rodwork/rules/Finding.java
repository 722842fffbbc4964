package rodwork.rules;

/**
 * One step of a decision: what was measured, where, and what it was held against.
 *
 * @param rule id of the rule in the rulebook
 * @param what the thing measured
 * @param place where
 * @param reading what was found
 * @param limit what it was held against
 * @param source where the limit comes from
 * @param standing how far that can be trusted
 * @param verdict how the reading stands to the limit
 */
public record Finding(
    String rule,
    String what,
    Place place,
    Reading reading,
    Limit limit,
    String source,
    Standing standing,
    Verdict verdict) {

  /** Judges the reading. */
  public static Finding of(
      String rule,
      String what,
      Place place,
      Reading reading,
      Limit limit,
      String source,
      Standing standing) {
    return new Finding(rule, what, place, reading, limit, source, standing, limit.judge(reading));
  }

  /** Holds a reading against the least that a threshold wants. */
  public static Finding least(Threshold rule, String what, Place place, Reading reading) {
    return of(rule, what, place, reading, new Limit.Least(rule.value(), rule.unit()));
  }

  /** Holds a reading against the most that a threshold lets be. */
  public static Finding most(Threshold rule, String what, Place place, Reading reading) {
    return of(rule, what, place, reading, new Limit.Most(rule.value(), rule.unit()));
  }

  private static Finding of(
      Threshold rule, String what, Place place, Reading reading, Limit limit) {
    return of(rule.id(), what, place, reading, limit, rule.source(), rule.standing());
  }

  /**
   * The finding in one sentence, with value, limit, unit and standing.
   *
   * @param numbering how tooth numbers are written
   */
  public String sentence(Wording.Numbering numbering) {
    return "%s, %s: %s; wanted %s – %s (%s: %s)"
        .formatted(
            what,
            place.in(numbering),
            reading.words(),
            limit.words(),
            verdict.words(),
            standing.words(),
            source);
  }
}
