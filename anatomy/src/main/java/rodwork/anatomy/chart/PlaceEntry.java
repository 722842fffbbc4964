package rodwork.anatomy.chart;

import java.util.OptionalDouble;

/**
 * What the chart says of the soft tissue at the place of one tooth, standing or missing.
 *
 * @param vestibuleDepthMm from the gingival margin, or the crest of the ridge, to the fold of the
 *     vestibule on the facial side [mm]; empty: not known
 * @param floorDepthMm lower jaw: from the lingual gingival margin to the floor of the mouth with
 *     the tongue raised [mm]; empty: not known
 * @param facialFrenum whether a frenum comes near the margin on the facial side
 * @param lingualFrenum the same on the lingual side
 */
public record PlaceEntry(
    OptionalDouble vestibuleDepthMm,
    OptionalDouble floorDepthMm,
    Answer facialFrenum,
    Answer lingualFrenum) {
  public static final PlaceEntry NOT_KNOWN =
      new PlaceEntry(
          OptionalDouble.empty(), OptionalDouble.empty(), Answer.NOT_KNOWN, Answer.NOT_KNOWN);

  /** A depth beyond this is a slip of the pen [mm]. */
  public static final double GREATEST_DEPTH_MM = 40;

  public PlaceEntry {
    check("vestibule depth", vestibuleDepthMm);
    check("floor-of-mouth depth", floorDepthMm);
  }

  private static void check(String what, OptionalDouble depth) {
    if (depth.isPresent()
        && !(depth.getAsDouble() >= 0 && depth.getAsDouble() <= GREATEST_DEPTH_MM)) {
      throw new IllegalArgumentException(
          what + " " + depth.getAsDouble() + " mm; it lies from 0 to " + GREATEST_DEPTH_MM + " mm");
    }
  }
}
