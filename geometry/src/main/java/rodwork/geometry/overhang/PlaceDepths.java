package rodwork.geometry.overhang;

import java.util.Arrays;
import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;

/**
 * How deep a few places of a mesh lie under what is above, along one axis: the depths of {@link
 * Overhang}, for one who asks at the same places along many axes.
 *
 * <p>Only the folds that can bound the shadow of such a place are cut: those that rise above its
 * level within the cap. That is a small part of the work for all vertices. The depths are the same.
 *
 * <p>Immutable and safe for several threads.
 */
public final class PlaceDepths {
  /** Kept beyond what the bounds ask for, so that no rounding tells [mm]. */
  private static final double SLACK_MM = 0.05;

  private final Projection at;
  private final Shadow shadow;
  private final OverhangLimits limits;

  /** Lowest level that is asked about within reach of each column [mm]; +∞ where none is. */
  private final float[] lowest;

  private PlaceDepths(Projection at, Shadow shadow, OverhangLimits limits, float[] lowest) {
    this.at = at;
    this.shadow = shadow;
    this.limits = limits;
    this.lowest = lowest;
  }

  static PlaceDepths of(
      CasterMesh mesh,
      double cell,
      Vec3 axis,
      OverhangLimits limits,
      List<Vec3> places,
      Watch watch) {
    Projection at = Projection.of(mesh.xyz, axis);
    Columns columns = new Columns(at, mesh.corners, cell, watch);
    float[] lowest = new float[columns.nx * columns.ny];
    Arrays.fill(lowest, Float.POSITIVE_INFINITY);
    for (Vec3 place : places) {
      Vec3 q = at.into(place);
      if (columns.covered(q.x(), q.y(), q.z())) {
        ask(columns, lowest, q, limits.capMm());
      }
    }
    watch.check();
    boolean[] visible = new boolean[mesh.corners.length / 3];
    Arrays.fill(visible, true);
    Eaves eaves = Eaves.above(mesh, columns, lowest, watch);
    return new PlaceDepths(at, new Shadow(columns, eaves, visible), limits, lowest);
  }

  private static void ask(Columns columns, float[] lowest, Vec3 q, double capMm) {
    int reach = (int) Math.ceil(capMm / columns.cell) + 1;
    int ix = (int) Math.floor((q.x() - columns.x0) / columns.cell);
    int iy = (int) Math.floor((q.y() - columns.y0) / columns.cell);
    float level = (float) (q.z() - SLACK_MM);
    for (int j = Math.max(0, iy - reach); j <= Math.min(columns.ny - 1, iy + reach); j++) {
      for (int i = Math.max(0, ix - reach); i <= Math.min(columns.nx - 1, ix + reach); i++) {
        int c = j * columns.nx + i;
        lowest[c] = Math.min(lowest[c], level);
      }
    }
  }

  /** The viewing axis [unit vector]. */
  public Vec3 axis() {
    return at.axis;
  }

  /**
   * Depth of one of the places [mm], at most the cap.
   *
   * @throws IllegalArgumentException if this was not made for that place
   */
  public double depthAt(Vec3 place) {
    Shadow.Found found = new Shadow.Found();
    return search(place, found) ? Math.sqrt(found.best2) : 0;
  }

  /** How far above one of the places the surface lies that its free line passes, along the axis. */
  public double riseMm(Vec3 place) {
    Shadow.Found found = new Shadow.Found();
    boolean met = search(place, found) && found.any();
    return met ? Math.max(0, found.top(shadow.eaves) - at.into(place).z()) : 0;
  }

  /** Whether anything lies above the place; then its nearest free line. */
  private boolean search(Vec3 place, Shadow.Found found) {
    Vec3 q = at.into(place);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return false;
    }
    checkAsked(q);
    shadow.nearest(q.x(), q.y(), q.z(), limits.capMm(), -1, found);
    return true;
  }

  /**
   * Depth of one of the places in a horizontal direction [mm], at most the cap.
   *
   * @param direction need not be horizontal: its horizontal part counts
   */
  public double depthAlong(Vec3 place, Vec3 direction) {
    Vec3 q = at.into(place);
    if (!shadow.columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    checkAsked(q);
    Vec3 d = direction.across(at.axis).unit();
    return shadow.along(
        q.x(), q.y(), q.z(), at.e1.dot(d), at.e2.dot(d), limits.capMm(), new Shadow.Found());
  }

  private void checkAsked(Vec3 q) {
    int c = shadow.columns.column(q.x(), q.y());
    if (c < 0 || lowest[c] > q.z()) {
      throw new IllegalArgumentException("depths were not prepared for the place " + q);
    }
  }
}
