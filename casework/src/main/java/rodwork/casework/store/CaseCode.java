package rodwork.casework.store;

/**
 * What a case is called: 1 to 40 letters, digits, spaces and {@code . _ -}, the first a letter or a
 * digit, the last no space. Case codes that differ only in capitals are the same.
 *
 * <p>A code stands for a patient; it needs no name, and should hold none.
 */
public record CaseCode(String text) {
  private static final String SHAPE = "[A-Za-z0-9]([A-Za-z0-9 ._-]{0,38}[A-Za-z0-9._-])?";

  public CaseCode {
    if (!text.matches(SHAPE)) {
      throw StoreProblem.CODE_WRONG.with(text.length() > 60 ? text.substring(0, 60) + "…" : text);
    }
  }

  @Override
  public String toString() {
    return text;
  }
}
