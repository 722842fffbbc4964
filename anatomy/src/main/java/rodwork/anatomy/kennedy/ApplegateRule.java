package rodwork.anatomy.kennedy;

/**
 * Applegate's rules for applying Kennedy's classes, in our own words. Taught alike everywhere
 * (dentalnotebook.com; medizzy.com 32713134; odontologiavirtual.com 2025/01).
 */
public enum ApplegateRule {
  EXTRACTIONS_FIRST(1, "The arch is classified as it will be after the planned extractions."),
  THIRD_MOLAR_ABSENT(2, "A missing third molar that is not replaced is left out."),
  THIRD_MOLAR_PRESENT(3, "A standing third molar counts only where it is an abutment."),
  SECOND_MOLAR_ABSENT(4, "A missing second molar that is not replaced is left out."),
  MOST_POSTERIOR(5, "The most posterior space decides the class."),
  MODIFICATIONS(6, "Every further space is a modification, and they are counted."),
  COUNT_NOT_LENGTH(7, "The number of further spaces counts, not their length."),
  CLASS_IV_ALONE(8, "Class IV has no modification: any space behind it decides instead.");

  private final int number;
  private final String text;

  ApplegateRule(int number, String text) {
    this.number = number;
    this.text = text;
  }

  public int number() {
    return number;
  }

  public String text() {
    return text;
  }
}
