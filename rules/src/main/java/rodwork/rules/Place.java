package rodwork.rules;

import java.util.Optional;

/**
 * Where something was measured.
 *
 * @param wording for a person: "tooth 35, mid-facial, 6 mm below the margin"
 * @param spot where to jump to on the cast, where there is one such place
 */
public record Place(Wording wording, Optional<Spot> spot) {
  /** A point in the scan frame [mm]. */
  public record Spot(double x, double y, double z) {}

  /** A place without a tooth and without a point. */
  public static Place of(String words) {
    return new Place(Wording.of(words), Optional.empty());
  }

  /** A place on a tooth, without a point. */
  public static Place of(Wording.Numbered tooth, String words) {
    return new Place(on(tooth, words), Optional.empty());
  }

  /** A place on a tooth. */
  public static Place of(Wording.Numbered tooth, String words, Spot spot) {
    return new Place(on(tooth, words), Optional.of(spot));
  }

  private static Wording on(Wording.Numbered tooth, String words) {
    return words.isEmpty() ? Wording.of("tooth ", tooth) : Wording.of("tooth ", tooth, ", ", words);
  }

  /** As a person reads it. */
  public String in(Wording.Numbering numbering) {
    return wording.in(numbering);
  }

  /** With FDI numbers, as files have them. */
  public String words() {
    return wording.fdi();
  }
}
