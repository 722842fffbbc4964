package rodwork.anatomy.tooth;

/** Thirds of a facial or lingual surface from mesial to distal. */
public enum AcrossThird {
  MESIAL,
  MIDDLE,
  DISTAL;

  /**
   * The third of a place.
   *
   * @param share from the middle of the crown to its mesial side: 1 at the greatest width, −1 at
   *     the distal one
   */
  static AcrossThird of(double share) {
    return share > 1 / 3.0 ? MESIAL : share < -1 / 3.0 ? DISTAL : MIDDLE;
  }
}
