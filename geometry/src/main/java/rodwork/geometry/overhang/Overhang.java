package rodwork.geometry.overhang;

import java.util.List;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Parallel;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;

/**
 * A mesh seen along one axis: how deep each of its points lies under what is above.
 *
 * <p>With {@code h(y)} the greatest height of the mesh on the vertical line through the horizontal
 * position y (−∞ where there is none), the depth of a point x is
 *
 * <pre>u(x) = inf { |y − x_h| : h(y) ≤ height(x) }</pre>
 *
 * and its depth along a horizontal unit vector d is {@code u_d(x) = inf { t ≥ 0 : h(x_h + t·d) ≤
 * height(x) }}; always {@code u ≤ u_d}. Both are exact on the triangles themselves up to rounding,
 * except that the height of what lies below a fold is taken as straight between points at most 4 µm
 * off (see {@link Eaves}); surfaces are two-sided, so that open shells give the right answer.
 * Depths are capped.
 *
 * <p>Immutable and safe for several threads. Identities: turning mesh and axis together changes
 * nothing; refining triangles without moving the surface changes nothing; taking away material that
 * lies above never makes a depth grow; moving a point sideways by s changes u by at most s.
 */
public final class Overhang {
  /** Bits of {@link #flags}. */
  public static final int CAPPED = 1;

  public static final int UNSURE = 2;
  public static final int NO_GAUGE_REACHES = 4;

  /** Columns per mean edge; smaller columns hold fewer triangles each but more in all. */
  private static final double CELL_PER_EDGE = 0.8;

  private static final double SMALLEST_CELL_MM = 0.03;
  private static final double GREATEST_CELL_MM = 4;

  private static final int CHUNK = 1 << 11;

  private final CasterMesh mesh;
  private final Shadow shadow;
  private final FreeLine freeLine;
  private final Projection at;
  private final OverhangLimits limits;
  private final boolean[] hidden;
  private volatile float @Nullable [] depth;
  private volatile byte @Nullable [] flags;

  private Overhang(
      CasterMesh mesh,
      Shadow shadow,
      FreeLine freeLine,
      Projection at,
      OverhangLimits limits,
      boolean[] hidden) {
    this.mesh = mesh;
    this.shadow = shadow;
    this.freeLine = freeLine;
    this.at = at;
    this.limits = limits;
    this.hidden = hidden;
  }

  /** Makes overhangs of one mesh along any number of axes; safe for several threads. */
  public static final class Caster {
    private final CasterMesh mesh;
    private final BoundaryLoops loops;
    private final double cell;

    public Caster(MeshTopology topology, BoundaryLoops loops) {
      this.mesh = new CasterMesh(topology);
      this.loops = loops;
      this.cell = Math.clamp(CELL_PER_EDGE * mesh.meanLengthMm, SMALLEST_CELL_MM, GREATEST_CELL_MM);
    }

    /**
     * The overhang along one axis, the depths of all vertices found.
     *
     * @param axis viewing axis, from below to above; any length but 0
     * @param limits cap and gauge
     * @param watch stops the work
     */
    public Overhang along(Vec3 axis, OverhangLimits limits, Watch watch) {
      Overhang overhang = sparsely(axis, limits, watch);
      overhang.depths(watch);
      return overhang;
    }

    /**
     * The same overhang, for one who asks at a few places: the depths of the vertices are found
     * only when they are first asked for.
     */
    public Overhang sparsely(Vec3 axis, OverhangLimits limits, Watch watch) {
      Projection at = Projection.of(mesh.xyz, axis);
      Columns columns = new Columns(at, mesh.corners, cell, watch);
      Eaves eaves = Eaves.of(mesh, columns, watch);
      int n = at.x.length;
      boolean[] hidden = new boolean[n];
      Parallel.chunks(
          n,
          CHUNK,
          watch,
          (from, to) -> {
            for (int v = from; v < to; v++) {
              hidden[v] = columns.covered(at.x[v], at.y[v], at.z[v]);
            }
          });
      Shadow shadow = new Shadow(columns, eaves, visible(hidden, eaves));
      FreeLine freeLine = new FreeLine(mesh, shadow, loops);
      return new Overhang(mesh, shadow, freeLine, at, limits, hidden);
    }

    /**
     * The depths of some places along one axis, without what they do not need.
     *
     * @param places whose depth will be asked
     * @param along whose depth in one direction will be asked
     */
    public PlaceDepths at(
        List<Vec3> places, List<Vec3> along, Vec3 axis, OverhangLimits limits, Watch watch) {
      return PlaceDepths.of(mesh, cell, axis, limits, places, along, watch);
    }

    /** The triangles of which anything may be seen from above. */
    private boolean[] visible(boolean[] hidden, Eaves eaves) {
      boolean[] visible = new boolean[mesh.corners.length / 3];
      for (int t = 0; t < visible.length; t++) {
        visible[t] =
            !hidden[mesh.corners[3 * t]]
                || !hidden[mesh.corners[3 * t + 1]]
                || !hidden[mesh.corners[3 * t + 2]];
      }
      for (int t : eaves.seen) {
        if (t >= 0) {
          visible[t] = true;
        }
      }
      return visible;
    }
  }

  /** The viewing axis [unit vector]. */
  public Vec3 axis() {
    return at.axis;
  }

  public OverhangLimits limits() {
    return limits;
  }

  public int vertexCount() {
    return hidden.length;
  }

  private float[] depths(Watch watch) {
    float[] known = depth;
    if (known == null) {
      float[] found = new float[hidden.length];
      Parallel.chunks(
          found.length,
          CHUNK,
          watch,
          (from, to) -> {
            Shadow.Found f = new Shadow.Found();
            int hint = -1;
            for (int v = from; v < to; v++) {
              if (hidden[v]) {
                shadow.nearest(at.x[v], at.y[v], at.z[v], limits.capMm(), hint, f);
                found[mesh.vertexOf[v]] = (float) Math.sqrt(f.best2);
                hint = f.piece;
              }
            }
          });
      depth = found;
      known = found;
    }
    return known;
  }

  /** Depth of a vertex [mm], at most the cap. */
  public double depth(int vertex) {
    return depths(Watch.NONE)[vertex];
  }

  /** A copy of the depths of all vertices [mm]. */
  public float[] copyOfDepths() {
    return depths(Watch.NONE).clone();
  }

  /** Height of a vertex along the axis [mm]. */
  public double height(int vertex) {
    return at.z[mesh.placeOf[vertex]];
  }

  /**
   * Flags of all vertices, as bits {@link #CAPPED}, {@link #UNSURE}, {@link #NO_GAUGE_REACHES}:
   * found when first asked for, since a survey itself needs them only where it puts a mark.
   */
  public byte[] copyOfFlags(Watch watch) {
    byte[] known = flags;
    if (known == null) {
      float[] depths = depths(watch);
      byte[] found = new byte[depths.length];
      Parallel.chunks(
          depths.length,
          CHUNK,
          watch,
          (from, to) -> {
            Shadow.Found f = new Shadow.Found();
            Shadow.Found scratch = new Shadow.Found();
            int hint = -1;
            for (int i = from; i < to; i++) {
              int v = mesh.vertexOf[i];
              if (depths[v] > 0) {
                shadow.nearest(at.x[i], at.y[i], at.z[i], limits.capMm(), hint, f);
                hint = f.piece;
                found[v] = (byte) flagsOf(f, scratch);
              }
            }
          });
      flags = found;
      known = found;
    }
    return known.clone();
  }

  private int flagsOf(Shadow.Found f, Shadow.Found scratch) {
    if (!f.any()) {
      return CAPPED;
    }
    return (freeLine.unsure(f) ? UNSURE : 0)
        | (freeLine.noGaugeReaches(f, limits, scratch) ? NO_GAUGE_REACHES : 0);
  }

  /** Depth of any point [mm], at most the cap. */
  public double depthAt(Vec3 point) {
    Vec3 q = at.into(point);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Shadow.Found f = new Shadow.Found();
    shadow.nearest(q.x(), q.y(), q.z(), limits.capMm(), -1, f);
    return Math.sqrt(f.best2);
  }

  /**
   * The nearest free line of any point, at the level of the point; the point itself where nothing
   * lies above or the depth is capped.
   */
  public Vec3 freeLine(Vec3 point) {
    Vec3 q = at.into(point);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return point;
    }
    Shadow.Found f = new Shadow.Found();
    shadow.nearest(q.x(), q.y(), q.z(), limits.capMm(), -1, f);
    return f.any() ? at.back(f.qx, f.qy, q.z()) : point;
  }

  /**
   * The greatest height of the mesh on the vertical line through a point [mm], {@code −∞} where
   * there is none: the upper envelope h of the definition.
   */
  public double topOver(Vec3 point) {
    Vec3 q = at.into(point);
    int t = shadow.columns.highest(q.x(), q.y());
    return t < 0 ? Double.NEGATIVE_INFINITY : shadow.columns.heightOf(t, q.x(), q.y());
  }

  /** Depth of any point with all that belongs to it. */
  public OverhangReading read(Vec3 point) {
    Vec3 q = at.into(point);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return new OverhangReading(point, 0, false, point, point, false, false);
    }
    Shadow.Found f = new Shadow.Found();
    shadow.nearest(q.x(), q.y(), q.z(), limits.capMm(), -1, f);
    if (!f.any()) {
      return new OverhangReading(point, limits.capMm(), true, point, point, false, false);
    }
    int bits = flagsOf(f, new Shadow.Found());
    return new OverhangReading(
        point,
        Math.sqrt(f.best2),
        false,
        at.back(f.qx, f.qy, q.z()),
        at.back(f.qx, f.qy, f.top(shadow.eaves)),
        (bits & UNSURE) != 0,
        (bits & NO_GAUGE_REACHES) != 0);
  }

  /**
   * Depth of any point in a horizontal direction [mm], at most the cap.
   *
   * @param direction need not be horizontal: its horizontal part counts
   */
  public double depthAlong(Vec3 point, Vec3 direction) {
    Vec3 q = at.into(point);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Vec3 d = direction.across(at.axis).unit();
    return shadow.along(
        q.x(), q.y(), q.z(), at.e1.dot(d), at.e2.dot(d), limits.capMm(), new Shadow.Found());
  }

  /**
   * Volume of the space outside the body with a counted part of it above, down to the next surface
   * below, or where there is none to the lowest point of that connected overhang [mm³]. Sampled at
   * the width of a column, which is {@link #CELL_PER_EDGE} mean edges.
   *
   * @param counted which triangles may be the roof
   */
  public double overhungVolumeMm3(IntPredicate counted, Watch watch) {
    double[] borders = OverhungSpace.borders(mesh, at, depths(watch));
    return new OverhungSpace(mesh, shadow.columns, counted, borders).volumeMm3(watch);
  }
}
