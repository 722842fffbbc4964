package rodwork.geometry.overhang;

import rodwork.geometry.Parallel;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
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
 * height(x) }}; always {@code u ≤ u_d}. Both are exact on the triangles up to rounding, except that
 * the height of what lies below a fold is taken as linear along each {@linkplain Eaves piece} of
 * it; surfaces are two-sided. Depths are capped.
 *
 * <p>Immutable and safe for several threads. Identities: scaling the mesh scales depths; turning
 * mesh and axis together changes nothing; taking away material that lies above never makes a depth
 * grow.
 */
public final class Overhang {
  private static final int CHUNK = 1 << 11;

  private final CasterMesh mesh;
  private final Shadow shadow;
  private final Projection at;
  private final double capMm;
  private final float[] depth;
  private final int[] boundary;

  private Overhang(
      CasterMesh mesh, Shadow shadow, Projection at, double capMm, float[] depth, int[] boundary) {
    this.mesh = mesh;
    this.shadow = shadow;
    this.at = at;
    this.capMm = capMm;
    this.depth = depth;
    this.boundary = boundary;
  }

  /** Makes overhangs of one mesh along any number of axes; safe for several threads. */
  public static final class Caster {
    private final CasterMesh mesh;
    private final double cell;

    public Caster(MeshTopology topology) {
      this.mesh = new CasterMesh(topology);
      this.cell = Math.clamp(CELL_PER_EDGE * mesh.meanLengthMm, 0.03, 4.0);
    }

    /**
     * @param axis viewing axis, from below to above; any length but 0
     * @param capMm largest depth told apart [mm]
     * @param watch stops the work
     */
    public Overhang along(Vec3 axis, double capMm, Watch watch) {
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
      int triangles = mesh.corners.length / 3;
      boolean[] visible = new boolean[triangles];
      for (int t = 0; t < triangles; t++) {
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
      Shadow shadow = new Shadow(columns, eaves, visible);
      float[] depth = new float[n];
      int[] boundary = new int[n];
      Parallel.chunks(
          n,
          CHUNK,
          watch,
          (from, to) -> {
            Shadow.Found f = new Shadow.Found();
            int hint = -1;
            for (int v = from; v < to; v++) {
              if (!hidden[v]) {
                boundary[mesh.vertexOf[v]] = FREE;
                continue;
              }
              shadow.nearest(at.x[v], at.y[v], at.z[v], capMm, hint, f);
              depth[mesh.vertexOf[v]] = (float) Math.sqrt(f.best2);
              boundary[mesh.vertexOf[v]] = f.piece >= 0 ? f.piece : f.triangle >= 0 ? -3 - f.triangle : CAPPED;
              hint = f.piece;
            }
          });
      return new Overhang(mesh, shadow, at, capMm, depth, boundary);
    }
  }

  /** Columns per mean edge: measured, see docs/benchmarks.md. */
  private static final double CELL_PER_EDGE = 0.8;

  private static final int FREE = -1;
  private static final int CAPPED = -2;

  public Vec3 axis() {
    return at.axis;
  }

  public double capMm() {
    return capMm;
  }

  public int vertexCount() {
    return depth.length;
  }

  /** Depth of a vertex [mm], at most the cap. */
  public double depth(int vertex) {
    return depth[vertex];
  }

  public boolean capped(int vertex) {
    return boundary[vertex] == CAPPED;
  }

  /** A copy of the depths of all vertices [mm]. */
  public float[] copyOfDepths() {
    return depth.clone();
  }

  /** Height of a vertex along the axis [mm]. */
  public double height(int vertex) {
    return at.z[mesh.placeOf[vertex]];
  }

  /** Depth of any point [mm], at most the cap. */
  public double depthAt(Vec3 point) {
    Vec3 q = at.into(point);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Shadow.Found f = new Shadow.Found();
    shadow.nearest(q.x(), q.y(), q.z(), capMm, -1, f);
    return Math.sqrt(f.best2);
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
    return shadow.along(q.x(), q.y(), q.z(), at.e1.dot(d), at.e2.dot(d), capMm, new Shadow.Found());
  }
}
