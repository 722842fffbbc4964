package rodwork.rules;

/** How a reading stands to its limit. */
public enum Verdict {
  MET("met"),
  NOT_MET("not met"),
  /** The reading lies within its uncertainty of the limit. */
  TOO_CLOSE_TO_CALL("too close to call"),
  /** There is no reading; neither pass nor failure. */
  NOT_KNOWN("not known");

  private final String words;

  Verdict(String words) {
    this.words = words;
  }

  /** For a person. */
  public String words() {
    return words;
  }

  /** Whether this is an answer: met or not. */
  public boolean decided() {
    return this == MET || this == NOT_MET;
  }
}
