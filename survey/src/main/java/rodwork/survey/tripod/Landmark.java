package rodwork.survey.tripod;

import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;
import rodwork.rules.Wording;

/**
 * A point of a cast that anybody finds again to a few tenths of a millimetre: a cusp tip, the angle
 * of an incisal edge, the tip of a papilla.
 *
 * @param kind what it is
 * @param tooth that it belongs to
 * @param other the tooth on the other side of a papilla; empty for all else
 * @param point scan frame [mm]
 */
public record Landmark(Kind kind, ToothNumber tooth, Optional<ToothNumber> other, Vec3 point)
    implements Wording.Worded {
  /** What a landmark is. */
  public enum Kind {
    CUSP,
    FACIAL_CUSP,
    LINGUAL_CUSP,
    MESIOFACIAL_CUSP,
    DISTOFACIAL_CUSP,
    MESIOLINGUAL_CUSP,
    DISTOLINGUAL_CUSP,
    MESIOINCISAL_ANGLE,
    DISTOINCISAL_ANGLE,
    FACIAL_PAPILLA,
    LINGUAL_PAPILLA;

    /** In words, such as {@code mesiofacial cusp}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** In words, FDI, such as {@code mesiofacial cusp of 47}, {@code facial papilla of 43 and 44}. */
  @Override
  public String toString() {
    return wording().fdi();
  }

  @Override
  public Wording wording() {
    return other
        .map(second -> Wording.of(kind.word(), " of ", tooth, " and ", second))
        .orElseGet(() -> Wording.of(kind.word(), " of ", tooth));
  }
}
