package rodwork.anatomy.tooth;

/** Thirds of a crown from the gingival margin to cusp tip or incisal edge at that place. */
public enum HeightThird {
  OCCLUSAL,
  MIDDLE,
  GINGIVAL;

  /**
   * The third of a place.
   *
   * @param share from the margin, 0, to cusp tip or edge, 1; below 0 on the gum
   */
  static HeightThird of(double share) {
    return share > 2 / 3.0 ? OCCLUSAL : share < 1 / 3.0 ? GINGIVAL : MIDDLE;
  }
}
