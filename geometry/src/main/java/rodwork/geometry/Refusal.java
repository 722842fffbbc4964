package rodwork.geometry;

/**
 * Input that Rodwork cannot take, said so that a person can act on it.
 *
 * <p>The text names the thing, the place, the value, the limit with its unit, and what to do next.
 * The code is stable: programs may rely on it, whatever the wording becomes.
 */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String code;
  private final String advice;

  /**
   * Makes a refusal; each module keeps its texts together in one enum and builds refusals there.
   *
   * @param code stable code in lower case with hyphens, such as {@code stl-cut-off}
   * @param message what is wrong: thing, place, value, limit, unit
   * @param advice what to do next
   */
  public Refusal(String code, String message, String advice) {
    super(message);
    this.code = code;
    this.advice = advice;
  }

  public String code() {
    return code;
  }

  public String advice() {
    return advice;
  }

  /** The message of a refusal is never null. */
  @Override
  public String getMessage() {
    return String.valueOf(super.getMessage());
  }
}
