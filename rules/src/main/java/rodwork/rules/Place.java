package rodwork.rules;

import java.util.Optional;

/**
 * Where something was measured.
 *
 * @param words for a person: "tooth 35, mid-facial, 6 mm below the margin"
 * @param spot where to jump to on the cast, where there is one such place
 */
public record Place(String words, Optional<Spot> spot) {
  /** A point in the scan frame [mm]. */
  public record Spot(double x, double y, double z) {}

  /** A place without a point. */
  public static Place of(String words) {
    return new Place(words, Optional.empty());
  }
}
