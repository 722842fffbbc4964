package rodwork.survey;

import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangReading;

/**
 * One cast at one path, measured. Immutable; positions are in the scan frame [mm].
 *
 * <p>What costs and is not always wanted (flags of all vertices, figures, the reference
 * orientation) is found when first asked for.
 */
public final class Survey {
  /**
   * Bit of {@link #copyOfFlags}, beside those of {@link Overhang}: base of the cast, not anatomy.
   */
  public static final int BASE = 8;

  private final Surveyor surveyor;
  private final Overhang overhang;
  private final Gauges gauges;
  private final List<SurveyLine> lines;
  private final int hiddenLines;
  private final List<GaugeMark> marks;
  private volatile @Nullable SurveyFigures figures;

  Survey(
      Surveyor surveyor,
      Overhang overhang,
      Gauges gauges,
      List<SurveyLine> lines,
      int hiddenLines,
      List<GaugeMark> marks) {
    this.surveyor = surveyor;
    this.overhang = overhang;
    this.gauges = gauges;
    this.lines = List.copyOf(lines);
    this.hiddenLines = hiddenLines;
    this.marks = List.copyOf(marks);
  }

  /** The withdrawal axis [unit vector, scan frame]. */
  public Vec3 axis() {
    return overhang.axis();
  }

  public Gauges gauges() {
    return gauges;
  }

  public List<SurveyLine> lines() {
    return lines;
  }

  /** Pieces of survey line left out as too short or over too shallow an undercut. */
  public int hiddenLines() {
    return hiddenLines;
  }

  public List<GaugeMark> marks() {
    return marks;
  }

  /** Undercut depth of a vertex [mm], at most the cap. */
  public double depth(int vertex) {
    return overhang.depth(vertex);
  }

  /**
   * Undercut depth of any point in a horizontal direction, u_d [mm], at most the cap.
   *
   * @param direction its horizontal part counts
   */
  public double depthAlong(Vec3 point, Vec3 direction) {
    return overhang.depthAlong(point, direction);
  }

  /** Depths of all vertices [mm]. */
  public float[] copyOfDepths() {
    return overhang.copyOfDepths();
  }

  /** Flags of all vertices: the bits of {@link Overhang} and {@link #BASE}. */
  public byte[] copyOfFlags(Watch watch) {
    byte[] flags = overhang.copyOfFlags(watch);
    var mesh = surveyor.topology().mesh();
    boolean[] anatomic = new boolean[flags.length];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!surveyor.surface().isBase(t)) {
        for (int k = 0; k < 3; k++) {
          anatomic[mesh.corner(t, k)] = true;
        }
      }
    }
    for (int v = 0; v < flags.length; v++) {
      if (!anatomic[v]) {
        flags[v] |= BASE;
      }
    }
    return flags;
  }

  /** Areas, volume and deepest places of the anatomic surface. */
  public SurveyFigures figures(Watch watch) {
    SurveyFigures known = figures;
    if (known == null) {
      known = SurveyFigures.of(surveyor, overhang, watch);
      figures = known;
    }
    return known;
  }

  /**
   * Everything an upright rod tells of one point.
   *
   * @param point on the surface, scan frame [mm]
   * @param triangle the triangle that holds it
   */
  public RodReading read(Vec3 point, int triangle) {
    return RodReading.of(surveyor, overhang, gauges, point, triangle);
  }

  /** Depth of any point with its free line and flags; quicker than {@link #read}. */
  public OverhangReading overhangAt(Vec3 point) {
    return overhang.read(point);
  }

  /**
   * The way from a place down the surface to where a part of it ends.
   *
   * @param part which triangles belong to the part
   */
  public WayDown wayDown(Vec3 point, int triangle, IntPredicate part) {
    return WayDown.of(surveyor, overhang, point, triangle, part);
  }

  /** The surveyor that this survey came from. */
  public Surveyor surveyor() {
    return surveyor;
  }

  /**
   * The place of a gauge in the section through a point: along the horizontal direction of its free
   * line, or of its outward normal where it is free.
   *
   * @return the place, or none, with the deepest reading of that section in its stead
   */
  public Seat seat(Vec3 point, int triangle, double gaugeMm) {
    return Seat.of(surveyor, overhang, gauges, point, triangle, gaugeMm);
  }

  /** The section through a point, as an instrument maker would draw it. */
  public Profile profile(Vec3 point, int triangle, Optional<Double> gaugeMm) {
    return Profile.of(surveyor, overhang, gauges, point, triangle, gaugeMm);
  }

  Overhang overhang() {
    return overhang;
  }
}
