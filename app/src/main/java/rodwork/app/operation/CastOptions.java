package rodwork.app.operation;

import java.util.Optional;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.geometry.io.LengthUnit;

/**
 * What a person says about a cast.
 *
 * @param jaw which arch it is, or unknown
 * @param hints directions in the scan frame, as far as they were given
 * @param unit the file's unit of length; empty: to be found
 */
public record CastOptions(Jaw jaw, FrameHints hints, Optional<LengthUnit> unit) {
  public static final CastOptions NONE =
      new CastOptions(Jaw.UNKNOWN, FrameHints.NONE, Optional.empty());

  /** The jaw of that name, "upper" or "lower"; empty for any other. */
  public static Optional<Jaw> jawNamed(String name) {
    return switch (name) {
      case "upper" -> Optional.of(Jaw.UPPER);
      case "lower" -> Optional.of(Jaw.LOWER);
      default -> Optional.empty();
    };
  }

  /** The unit of that name, "mm", "cm", "m" or "in"; empty for any other. */
  public static Optional<LengthUnit> unitNamed(String name) {
    return switch (name) {
      case "mm" -> Optional.of(LengthUnit.MILLIMETRE);
      case "cm" -> Optional.of(LengthUnit.CENTIMETRE);
      case "m" -> Optional.of(LengthUnit.METRE);
      case "in" -> Optional.of(LengthUnit.INCH);
      default -> Optional.empty();
    };
  }
}
