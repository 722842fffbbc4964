package rodwork.survey.tooth;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.ToothPlace;

/** The parts of a crown that a survey answers for, between the line angles. */
public enum CrownZone {
  MESIOFACIAL(Surface.FACIAL, AcrossThird.MESIAL),
  MIDFACIAL(Surface.FACIAL, AcrossThird.MIDDLE),
  DISTOFACIAL(Surface.FACIAL, AcrossThird.DISTAL),
  MESIOLINGUAL(Surface.LINGUAL, AcrossThird.MESIAL),
  MIDLINGUAL(Surface.LINGUAL, AcrossThird.MIDDLE),
  DISTOLINGUAL(Surface.LINGUAL, AcrossThird.DISTAL),
  MESIAL(Surface.MESIAL, AcrossThird.MIDDLE),
  DISTAL(Surface.DISTAL, AcrossThird.MIDDLE);

  /** Thirds of the facial and the lingual surface. */
  public static final List<CrownZone> THIRDS =
      List.of(MESIOFACIAL, MIDFACIAL, DISTOFACIAL, MESIOLINGUAL, MIDLINGUAL, DISTOLINGUAL);

  private final Surface surface;
  private final AcrossThird across;

  CrownZone(Surface surface, AcrossThird across) {
    this.surface = surface;
    this.across = across;
  }

  public Surface surface() {
    return surface;
  }

  /** The third from mesial to distal; no distinction on a proximal surface. */
  public AcrossThird across() {
    return across;
  }

  /** Its name as the trade says it. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The zone of that name; empty for any other. */
  public static Optional<CrownZone> named(String label) {
    for (CrownZone zone : values()) {
      if (zone.label().equals(label.toLowerCase(Locale.ROOT))) {
        return Optional.of(zone);
      }
    }
    return Optional.empty();
  }

  /** The zone that a place lies in. */
  public static Optional<CrownZone> of(ToothPlace place) {
    for (CrownZone zone : values()) {
      if (zone.surface == place.surface()
          && (zone.surface.isProximal() || zone.across == place.across())) {
        return Optional.of(zone);
      }
    }
    return Optional.empty();
  }
}
