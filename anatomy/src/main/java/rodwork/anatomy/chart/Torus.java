package rodwork.anatomy.chart;

import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.Jaw;

/**
 * What the chart says of a torus: a bony swelling that carries nothing and that nothing rigid may
 * press on. Immutable.
 *
 * <p>How far it reaches is told by the teeth beside it, standing or missing: a palatal one from the
 * middle of one to the middle of the other, a mandibular one along the whole of both.
 *
 * @param there whether it is there
 * @param from tooth at whose level it begins in front; empty: not known
 * @param to tooth at whose level it ends behind; empty: not known
 * @param widthMm palatal: from side to side where it is widest [mm]; empty: not known
 * @param belowMarginMm mandibular: along the surface from the lingual gingival margins, or the
 *     crest of the ridge, down to its upper edge [mm]; empty: not known
 */
public record Torus(
    Answer there,
    Optional<ToothNumber> from,
    Optional<ToothNumber> to,
    OptionalDouble widthMm,
    OptionalDouble belowMarginMm) {
  public static final Torus NOT_KNOWN = of(Answer.NOT_KNOWN);

  /** A size beyond this is a slip of the pen [mm]. */
  public static final double GREATEST_MM = 50;

  /** Where tori grow. */
  public enum Site {
    PALATAL(Jaw.UPPER, "palatal torus"),
    MANDIBULAR_RIGHT(Jaw.LOWER, "right mandibular torus"),
    MANDIBULAR_LEFT(Jaw.LOWER, "left mandibular torus");

    private final Jaw jaw;
    private final String words;

    Site(Jaw jaw, String words) {
      this.jaw = jaw;
      this.words = words;
    }

    public Jaw jaw() {
      return jaw;
    }

    public String words() {
      return words;
    }

    /** Whether a torus here can lie beside a tooth: a mandibular one grows on its own side. */
    public boolean beside(ToothNumber tooth) {
      return tooth.jaw() == jaw
          && switch (this) {
            case PALATAL -> true;
            case MANDIBULAR_RIGHT -> tooth.side() == Side.RIGHT;
            case MANDIBULAR_LEFT -> tooth.side() == Side.LEFT;
          };
    }
  }

  /**
   * What of a torus cannot be.
   *
   * @param end which end is wrong: {@code from} or {@code to}
   * @param tooth that it names
   * @param wanted in its place
   */
  public record Misplaced(String end, ToothNumber tooth, String wanted) {}

  public Torus {
    check("width", widthMm);
    check("distance below the margin", belowMarginMm);
    if (there != Answer.YES
        && (from.isPresent()
            || to.isPresent()
            || widthMm.isPresent()
            || belowMarginMm.isPresent())) {
      throw new IllegalArgumentException("a torus that is not there has a place or a size");
    }
  }

  /** Of which no more is said than whether it is there. */
  public static Torus of(Answer there) {
    return new Torus(
        there, Optional.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** Where it cannot lie as told, at a site; empty where it can. */
  public Optional<Misplaced> misplaced(Site site) {
    Optional<Misplaced> side = off("from", from, site).or(() -> off("to", to, site));
    if (side.isPresent() || site != Site.PALATAL || from.isEmpty()) {
      return side;
    }
    // From the middle of a tooth to its own middle, or that of its like, is no length at all.
    return to.filter(t -> t.equals(from.get()) || t.mirrored().equals(from.get()))
        .map(t -> new Misplaced("to", t, "a tooth before or behind the level of from"));
  }

  private static Optional<Misplaced> off(String end, Optional<ToothNumber> tooth, Site site) {
    return tooth
        .filter(t -> !site.beside(t))
        .map(t -> new Misplaced(end, t, "a tooth beside which a " + site.words() + " lies"));
  }

  private static void check(String what, OptionalDouble mm) {
    if (mm.isPresent() && !(mm.getAsDouble() >= 0 && mm.getAsDouble() <= GREATEST_MM)) {
      throw new IllegalArgumentException(
          what
              + " of a torus "
              + mm.getAsDouble()
              + " mm; it lies from 0 to "
              + GREATEST_MM
              + " mm");
    }
  }
}
