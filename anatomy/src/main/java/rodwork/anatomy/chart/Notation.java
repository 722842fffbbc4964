package rodwork.anatomy.chart;

import rodwork.rules.Wording;

/** How tooth numbers are shown; inside they are FDI. */
public enum Notation implements Wording.Numbering {
  /** Two digits, quadrant and place from the midline: ISO 3950. */
  FDI,
  /**
   * 1 to 32 from the upper right third molar to the upper left one, then from the lower left to the
   * lower right: the American Dental Association's universal system.
   */
  UNIVERSAL,
  /** The place from the midline in the corner of a cross that is seen facing the patient. */
  PALMER;

  @Override
  public String number(int fdi) {
    return ToothNumber.of(fdi).in(this);
  }
}
