package rodwork.geometry;

import java.util.List;

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
  private final transient List<?> pieces;

  /**
   * Makes a refusal; each module keeps its texts together in one enum and builds refusals there.
   *
   * @param code stable code in lower case with hyphens, such as {@code stl-cut-off}
   * @param message what is wrong: thing, place, value, limit, unit
   * @param advice what to do next
   */
  public Refusal(String code, String message, String advice) {
    this(code, message, advice, List.of(message));
  }

  /**
   * Makes a refusal whose message names things that a reader may have told in his own way.
   *
   * @param code stable code in lower case with hyphens
   * @param message what is wrong, as files and logs have it
   * @param advice what to do next
   * @param pieces the same message, in order: words, and the things
   */
  public Refusal(String code, String message, String advice, List<?> pieces) {
    super(message);
    this.code = code;
    this.advice = advice;
    this.pieces = List.copyOf(pieces);
  }

  /** The message in pieces: words, and things that a reader may have told in his own way. */
  public List<?> pieces() {
    return pieces;
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
