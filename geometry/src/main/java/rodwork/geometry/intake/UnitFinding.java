package rodwork.geometry.intake;

import org.jspecify.annotations.Nullable;
import rodwork.geometry.io.LengthUnit;

/**
 * Which unit of length a file was taken to be in, and why.
 *
 * @param unit the unit taken
 * @param evidence what decided
 * @param declared what the file itself says; null where it says nothing
 * @param spanInFileUnit longest side of the surface's box, in the numbers of the file
 * @param spanMm the same [mm]
 */
public record UnitFinding(
    LengthUnit unit,
    Evidence evidence,
    @Nullable LengthUnit declared,
    double spanInFileUnit,
    double spanMm) {

  /** What decided the unit. */
  public enum Evidence {
    /** The user said it. */
    GIVEN,
    /** The file says it, and the span is that of an arch. */
    DECLARED,
    /** With this unit alone the span is that of an arch. */
    SPAN,
    /** No unit gives the span of a whole arch; mm, or what the file declares, comes near. */
    ASSUMED
  }
}
