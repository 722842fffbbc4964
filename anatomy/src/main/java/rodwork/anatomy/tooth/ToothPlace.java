package rodwork.anatomy.tooth;

import java.util.Locale;

/**
 * A place on a crown in the trade's words.
 *
 * @param surface the surface between the line angles
 * @param across third from mesial to distal
 * @param height third from margin to cusp tip or edge
 */
public record ToothPlace(Surface surface, AcrossThird across, HeightThird height) {

  /** Such as {@code mesiofacial}, {@code midlingual}, {@code distal}. */
  public String name() {
    String face = surface.name().toLowerCase(Locale.ROOT);
    if (surface.isProximal() || surface == Surface.OCCLUSAL) {
      return face;
    }
    return switch (across) {
          case MESIAL -> "mesio";
          case MIDDLE -> "mid";
          case DISTAL -> "disto";
        }
        + face;
  }
}
