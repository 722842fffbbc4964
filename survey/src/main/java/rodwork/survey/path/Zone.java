package rodwork.survey.path;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.geometry.Vec3;
import rodwork.rules.Wording;

/**
 * A part of the cast that something rigid will pass on its way, and whose undercut is in its way.
 *
 * @param kind what passes there
 * @param name where it is, such as {@code 35 to 37}
 * @param samples places that stand for its surface
 */
public record Zone(Kind kind, Wording name, List<Sample> samples) {

  /** What passes. */
  public enum Kind {
    BASE("base"),
    LINGUAL_STRIP("lingual strip"),
    PALATE("palate"),
    FACIAL_STRIP("facial strip"),
    /** The major connector of a plan, in place of the strip or the palate. */
    CONNECTOR("major connector"),
    /** A bar arm of a plan, in place of the facial strip of its tooth. */
    BAR("bar arm");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /**
   * A place that stands for a piece of surface.
   *
   * @param point scan frame [mm]
   * @param areaMm2 of the piece
   * @param normal of the piece [unit vector, away from the cast]
   * @param towards direction in which a bar stands off; null where only the nearest free line
   *     counts
   */
  public record Sample(Vec3 point, double areaMm2, Vec3 normal, @Nullable Vec3 towards) {}

  /** A sample stands for a piece of surface of this size [mm]. */
  static final double CELL_MM = 2.2;

  public Zone {
    samples = List.copyOf(samples);
  }

  /** Kind and name. */
  Wording wording() {
    return name.pieces().isEmpty() ? Wording.of(kind.word()) : Wording.of(kind.word(), " ", name);
  }

  /**
   * The zone of a piece of the cast.
   *
   * @param triangles of it
   * @param towards as in {@link Sample}
   */
  public static Zone over(
      Arch arch, Kind kind, Wording name, int[] triangles, @Nullable Vec3 towards) {
    return new Zone(
        kind,
        name,
        SurfaceCells.of(arch, triangles, CELL_MM).stream()
            .map(cell -> new Sample(cell.point(), cell.areaMm2(), cell.normal(), towards))
            .toList());
  }
}
