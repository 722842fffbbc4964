package rodwork.demo;

import java.util.EnumMap;
import java.util.Map;
import rodwork.anatomy.Jaw;

/** Makes each demo cast once for all tests. */
final class Casts {
  private static final Map<Jaw, DemoCast> MADE = new EnumMap<>(Jaw.class);

  private static final Map<Jaw, Measured> MEASURED = new EnumMap<>(Jaw.class);

  private Casts() {}

  static synchronized Measured measured(Jaw jaw) {
    return MEASURED.computeIfAbsent(jaw, j -> new Measured(of(j)));
  }

  /** The cast that a tooth stands on. */
  static Measured with(int fdi) {
    return measured(fdi < 30 ? Jaw.UPPER : Jaw.LOWER);
  }

  static synchronized DemoCast of(Jaw jaw) {
    return MADE.computeIfAbsent(jaw, j -> j == Jaw.LOWER ? DemoCast.lower() : DemoCast.upper());
  }
}
