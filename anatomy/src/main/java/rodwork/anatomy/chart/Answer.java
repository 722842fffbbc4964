package rodwork.anatomy.chart;

/** Yes, no, or not known; the last is never taken for one of the others. */
public enum Answer {
  YES,
  NO,
  NOT_KNOWN;

  public static Answer of(boolean yes) {
    return yes ? YES : NO;
  }

  /** What to go on with where a person has not answered. */
  public boolean or(boolean assumed) {
    return this == NOT_KNOWN ? assumed : this == YES;
  }

  public boolean known() {
    return this != NOT_KNOWN;
  }
}
