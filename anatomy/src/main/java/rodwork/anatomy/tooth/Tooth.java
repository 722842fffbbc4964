package rodwork.anatomy.tooth;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * One tooth on the scan. Immutable; positions are in the scan frame [mm].
 *
 * <p>The four upright surfaces meet at the line angles: where, in shares of half the width and half
 * the depth from the crown's middle, a place lies as far to mesial or distal as it lies to facial
 * or lingual.
 */
public final class Tooth {
  /** A triangle that faces the axis within this counts as occlusal [cosine]. */
  private static final double OCCLUSAL_COSINE = 0.7;

  /** Nearer to the axis than this, in half widths, a place has no surface but the occlusal one. */
  private static final double CORE = 0.35;

  private final ToothNumber number;
  private final CrownPatch crown;
  private final GingivalMargin margin;
  private final ToothAxes axes;
  private final CrownSize size;
  private final CrownHeights heights;
  private final Optional<Neighbour> mesial;
  private final Optional<Neighbour> distal;

  Tooth(
      ToothNumber number,
      CrownPatch crown,
      GingivalMargin margin,
      ToothAxes axes,
      CrownSize size,
      CrownHeights heights,
      Optional<Neighbour> mesial,
      Optional<Neighbour> distal) {
    this.number = number;
    this.crown = crown;
    this.margin = margin;
    this.axes = axes;
    this.size = size;
    this.heights = heights;
    this.mesial = mesial;
    this.distal = distal;
  }

  Tooth withNeighbours(Optional<Neighbour> toMesial, Optional<Neighbour> toDistal) {
    return new Tooth(number, crown, margin, axes, size, heights, toMesial, toDistal);
  }

  public ToothNumber number() {
    return number;
  }

  public GingivalMargin margin() {
    return margin;
  }

  public ToothAxes axes() {
    return axes;
  }

  public CrownSize size() {
    return size;
  }

  /** The next tooth towards the midline, across it for a central incisor. */
  public Optional<Neighbour> mesialNeighbour() {
    return mesial;
  }

  public Optional<Neighbour> distalNeighbour() {
    return distal;
  }

  /** The next tooth on a proximal side. */
  public Optional<Neighbour> neighbour(Surface side) {
    return switch (side) {
      case MESIAL -> mesial;
      case DISTAL -> distal;
      default -> throw new IllegalArgumentException("no neighbour on the " + side + " side");
    };
  }

  CrownPatch crown() {
    return crown;
  }

  /** The triangles of its crown, in rising order. */
  public int[] copyOfTriangles() {
    return crown.triangles().clone();
  }

  /** Whether a triangle of the cast belongs to its crown. */
  public boolean has(int triangle) {
    return crown.within().get(triangle);
  }

  /** Area of its crown [mm²]. */
  public double areaMm2() {
    return crown.areaMm2();
  }

  /**
   * Area with its label that hangs together with no other part of the crown, and is left out [mm²].
   */
  public double strayMm2() {
    return crown.strayMm2();
  }

  /** The middle of its crown's surface. */
  public Vec3 centroid() {
    return crown.centroid();
  }

  /**
   * Where a point of the crown lies, in the trade's words. Judged by position alone: for a point on
   * top of the crown the upright surface below it is told.
   */
  public ToothPlace place(Vec3 point) {
    Vec3 q = shares(point);
    return new ToothPlace(upright(q), AcrossThird.of(q.x()), HeightThird.of(heightShare(point)));
  }

  /** The surface that a triangle of the crown belongs to. */
  public Surface surface(int triangle) {
    TriangleMesh mesh = crown.topology().mesh();
    Vec3 n = mesh.doubleAreaNormal(triangle);
    Vec3 q = shares(mesh.pointOn(triangle, 1 / 3.0, 1 / 3.0));
    boolean up = n.dot(axes.axis()) >= OCCLUSAL_COSINE * n.length();
    return up || Math.hypot(q.x(), q.y()) < CORE ? Surface.OCCLUSAL : upright(q);
  }

  /** The triangles of one surface of the crown, in rising order. */
  public int[] trianglesOf(Surface surface) {
    return Arrays.stream(crown.triangles()).filter(t -> surface(t) == surface).toArray();
  }

  /** Places of one surface of the crown: amid each of its triangles, scan frame [mm]. */
  public List<Vec3> placesOf(Surface surface) {
    TriangleMesh mesh = crown.topology().mesh();
    return Arrays.stream(trianglesOf(surface))
        .mapToObj(t -> mesh.pointOn(t, 1 / 3.0, 1 / 3.0))
        .toList();
  }

  /**
   * How high on the crown a point lies at its place: 0 at the gingival margin, 1 at the cusp tip or
   * incisal edge, along the axis.
   */
  public double heightShare(Vec3 point) {
    Vec3 q = shares(point);
    double low = heights.margin(q.x(), q.y());
    double high = heights.top(q.x(), q.y());
    return high > low ? (q.z() - low) / (high - low) : 0;
  }

  /** How far a point lies over the margin at its place, along the axis [mm]. */
  public double overMarginMm(Vec3 point) {
    Vec3 q = shares(point);
    return q.z() - heights.margin(q.x(), q.y());
  }

  /**
   * Cusp tips, or the middle of the edge of a front tooth: the highest place of each part of the
   * crown that has one. Molars have four parts, premolars a facial and a lingual one.
   *
   * @param up unit vector
   */
  public List<Vec3> cuspTips(Vec3 up) {
    TriangleMesh mesh = crown.topology().mesh();
    int parts = number.isMolar() ? 4 : number.isPremolar() ? 2 : 1;
    Vec3[] tips = new Vec3[parts];
    for (int v : crown.innerVertices()) {
      Vec3 p = mesh.vertex(v);
      Vec3 q = shares(p);
      int part = parts == 1 ? 0 : (q.y() < 0 ? 1 : 0) + (parts == 4 && q.x() < 0 ? 2 : 0);
      if (tips[part] == null || p.minus(tips[part]).dot(up) > 0) {
        tips[part] = p;
      }
    }
    return Arrays.stream(tips).filter(Objects::nonNull).toList();
  }

  /** To mesial and facial in shares of half width and half depth, and along the axis [mm]. */
  private Vec3 shares(Vec3 point) {
    Vec3 q = axes.toTooth(point);
    return new Vec3(q.x() / (size.mesiodistalMm() / 2), q.y() / (size.faciolingualMm() / 2), q.z());
  }

  private static Surface upright(Vec3 shares) {
    if (Math.abs(shares.y()) >= Math.abs(shares.x())) {
      return shares.y() >= 0 ? Surface.FACIAL : Surface.LINGUAL;
    }
    return shares.x() >= 0 ? Surface.MESIAL : Surface.DISTAL;
  }

  @Override
  public String toString() {
    return "tooth " + number;
  }
}
