package rodwork.rules;

/**
 * One number that decisions rest on, with what it takes to question it.
 *
 * @param id stable name, lower case with hyphens
 * @param value the number, in the unit
 * @param unit its unit, such as {@code mm} or {@code degrees}; {@code 1} for a plain number
 * @param source where it comes from: author, title, year, or why it was chosen
 * @param standing how far it can be trusted
 */
public record Threshold(String id, double value, String unit, String source, Standing standing) {
  public Threshold {
    if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new IllegalArgumentException("id of a threshold: " + id);
    }
    if (!Double.isFinite(value) || unit.isBlank() || source.isBlank()) {
      throw new IllegalArgumentException("threshold " + id + " lacks value, unit or source");
    }
  }

  /** A number that Rodwork chose, and why. */
  public static Threshold own(String id, double value, String unit, String why) {
    return new Threshold(id, value, unit, why, Standing.OWN_CHOICE);
  }

  /** A number that practitioners use, without a published source. */
  public static Threshold practice(String id, double value, String unit, String what) {
    return new Threshold(id, value, unit, what, Standing.COMMON_PRACTICE);
  }

  /** A number that is taught. */
  public static Threshold taught(String id, double value, String unit, String where) {
    return new Threshold(id, value, unit, where, Standing.TEACHING_TEXT);
  }
}
