package rodwork.anatomy.kennedy;

/** The four classes of Kennedy. */
public enum KennedyClass {
  I("free ends on both sides"),
  II("a free end on one side"),
  III("a space with teeth before and behind it"),
  IV("one space across the midline, in front of all teeth that are left");

  private final String text;

  KennedyClass(String text) {
    this.text = text;
  }

  public String text() {
    return text;
  }
}
