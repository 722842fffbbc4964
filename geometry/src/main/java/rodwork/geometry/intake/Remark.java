package rodwork.geometry.intake;

/**
 * One thing that an intake noticed.
 *
 * @param code stable code, see {@link RemarkKind}
 * @param outcome what became of it
 * @param count how many there are
 * @param line a plain sentence with value, limit and unit
 */
public record Remark(String code, RemarkKind.Outcome outcome, long count, String line) {}
