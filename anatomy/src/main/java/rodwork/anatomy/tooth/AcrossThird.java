package rodwork.anatomy.tooth;

import java.util.Locale;

/** Thirds of a facial or lingual surface from mesial to distal. */
public enum AcrossThird {
  MESIAL,
  MIDDLE,
  DISTAL;

  /** The third of a surface as the trade says it, such as {@code mesio-facial}. */
  public String on(Surface surface) {
    String side =
        switch (this) {
          case MESIAL -> "mesio-";
          case MIDDLE -> "mid-";
          case DISTAL -> "disto-";
        };
    return side + surface.name().toLowerCase(Locale.ROOT);
  }

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
