package rodwork.casework.prescription;

/** Sizes of paper. */
public enum Paper {
  /** 210 × 297 mm (ISO 216). */
  A4("A4"),
  /** 8.5 × 11 in (ANSI A). */
  LETTER("letter");

  private final String css;

  Paper(String css) {
    this.css = css;
  }

  String css() {
    return css;
  }
}
