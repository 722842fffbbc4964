package rodwork.app.report;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.survey.SurveyLine;
import rodwork.survey.path.Zone;

/** The fixed words of kinds, the same in JSON, tables and pictures. */
public final class Words {
  private Words() {}

  /** "upper", "lower", or null where it is not known. */
  public static @Nullable String jaw(Jaw jaw) {
    return jaw == Jaw.UNKNOWN ? null : jaw.name().toLowerCase(Locale.ROOT);
  }

  /** "line", "band-upper" or "band-lower". */
  public static String kind(SurveyLine line) {
    return switch (line.kind()) {
      case LINE -> "line";
      case BAND_UPPER -> "band-upper";
      case BAND_LOWER -> "band-lower";
    };
  }

  /** Such as "lingual-strip". */
  public static String of(Zone.Kind kind) {
    return kind.word().replace(' ', '-');
  }

  /** The kind of a zone by its word. */
  public static Optional<Zone.Kind> zoneKind(String word) {
    return Arrays.stream(Zone.Kind.values()).filter(kind -> of(kind).equals(word)).findFirst();
  }
}
