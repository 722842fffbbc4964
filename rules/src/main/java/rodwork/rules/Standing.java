package rodwork.rules;

/** How far a figure of the trade can be trusted. */
public enum Standing {
  /** Seen in a primary published text. */
  PUBLISHED("published"),
  /** Taught, seen in teaching material. */
  TEACHING_TEXT("teaching text"),
  /** From memory of a text that was not looked up again. */
  FROM_MEMORY("from memory"),
  /** What practitioners do; no published source known. */
  COMMON_PRACTICE("common practice"),
  /** Chosen by Rodwork, for a reason that stands beside it. */
  OWN_CHOICE("own choice");

  private final String words;

  Standing(String words) {
    this.words = words;
  }

  /** As the rulebook and the screens say it. */
  public String words() {
    return words;
  }
}
