package rodwork.geometry.overhang;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;

/**
 * How deep a few places of a mesh lie under what is above, along one axis: the depths of {@link
 * Overhang}, for one who asks at the same places along many axes.
 *
 * <p>Only the folds that can bound the shadow of such a place are cut: those that rise above its
 * level, first within {@link #NEAR_MM} of it, and for the few that lie deeper within the cap. That
 * is a small part of the work for all vertices. The depths are the same.
 *
 * <p>Immutable and safe for several threads.
 */
public final class PlaceDepths {
  /** Most places that lie deep at all lie no deeper than this [mm]. */
  private static final double NEAR_MM = 1;

  /** Kept beyond what the bounds ask for, so that no rounding tells [mm]. */
  private static final double SLACK_MM = 0.05;

  private final Projection at;
  private final Columns columns;
  private final OverhangLimits limits;
  private final List<Stage> stages;

  private PlaceDepths(Projection at, Columns columns, OverhangLimits limits, List<Stage> stages) {
    this.at = at;
    this.columns = columns;
    this.limits = limits;
    this.stages = List.copyOf(stages);
  }

  /**
   * The shadow about some of the places.
   *
   * @param reachMm how far from them it is known [mm]
   * @param lowest lowest level that is asked about within reach of each column [mm]; +∞ where none
   */
  private record Stage(Shadow shadow, double reachMm, float[] lowest) {
    /** Whether it was made for a place. */
    boolean holds(Vec3 q) {
      int c = shadow.columns.column(q.x(), q.y());
      return c >= 0 && lowest[c] <= q.z();
    }
  }

  static PlaceDepths of(
      CasterMesh mesh,
      double cell,
      Vec3 axis,
      OverhangLimits limits,
      List<Vec3> places,
      List<Vec3> along,
      Watch watch) {
    Projection at = Projection.of(mesh.xyz, axis);
    Columns columns = new Columns(at, mesh.corners, cell, watch);
    List<Vec3> near = covered(at, columns, places);
    List<Vec3> far = covered(at, columns, along);
    double cap = limits.capMm();
    List<Stage> stages = new ArrayList<>();
    if (NEAR_MM < cap) {
      Stage stage = stage(mesh, columns, near, NEAR_MM, watch);
      stages.add(stage);
      for (Vec3 q : near) {
        if (!search(stage, q, new Shadow.Found())) {
          far.add(q);
        }
      }
    } else {
      far.addAll(near);
    }
    if (!far.isEmpty()) {
      stages.add(stage(mesh, columns, far, cap, watch));
    }
    return new PlaceDepths(at, columns, limits, stages);
  }

  private static List<Vec3> covered(Projection at, Columns columns, List<Vec3> places) {
    List<Vec3> covered = new ArrayList<>();
    for (Vec3 place : places) {
      Vec3 q = at.into(place);
      if (columns.covered(q.x(), q.y(), q.z())) {
        covered.add(q);
      }
    }
    return covered;
  }

  private static Stage stage(
      CasterMesh mesh, Columns columns, List<Vec3> asked, double reachMm, Watch watch) {
    watch.check();
    float[] lowest = new float[columns.nx * columns.ny];
    Arrays.fill(lowest, Float.POSITIVE_INFINITY);
    int reach = (int) Math.ceil(reachMm / columns.cell) + 1;
    for (Vec3 q : asked) {
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
    boolean[] visible = new boolean[mesh.corners.length / 3];
    Arrays.fill(visible, true);
    Eaves eaves = Eaves.above(mesh, columns, lowest, watch);
    return new Stage(new Shadow(columns, eaves, visible), reachMm, lowest);
  }

  /** Whether the nearest free line of a place lies within reach of a stage. */
  private static boolean search(Stage stage, Vec3 q, Shadow.Found found) {
    stage.shadow.nearest(q.x(), q.y(), q.z(), stage.reachMm, -1, found);
    return found.any();
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
    Vec3 q = at.into(place);
    if (!columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Shadow.Found found = new Shadow.Found();
    return found(q, found) == null ? limits.capMm() : Math.sqrt(found.best2);
  }

  /** How far above one of the places the surface lies that its free line passes, along the axis. */
  public double riseMm(Vec3 place) {
    Vec3 q = at.into(place);
    Shadow.Found found = new Shadow.Found();
    if (!columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Stage stage = found(q, found);
    return stage == null ? 0 : Math.max(0, found.top(stage.shadow.eaves) - q.z());
  }

  /** The stage that finds the free line of a place; null where it lies beyond the cap. */
  private @Nullable Stage found(Vec3 q, Shadow.Found found) {
    boolean asked = false;
    for (Stage stage : stages) {
      if (stage.holds(q)) {
        asked = true;
        if (search(stage, q, found)) {
          return stage;
        }
      }
    }
    if (!asked) {
      throw notAsked(q);
    }
    return null;
  }

  /**
   * Depth in a horizontal direction of one of the places that were named for it [mm], at most the
   * cap.
   *
   * @param direction need not be horizontal: its horizontal part counts
   */
  public double depthAlong(Vec3 place, Vec3 direction) {
    Vec3 q = at.into(place);
    if (!columns.covered(q.x(), q.y(), q.z())) {
      return 0;
    }
    Stage stage = stages.getLast();
    if (stage.reachMm < limits.capMm() || !stage.holds(q)) {
      throw notAsked(q);
    }
    Vec3 d = direction.across(at.axis).unit();
    return stage.shadow.along(
        q.x(), q.y(), q.z(), at.e1.dot(d), at.e2.dot(d), limits.capMm(), new Shadow.Found());
  }

  private static IllegalArgumentException notAsked(Vec3 q) {
    return new IllegalArgumentException("depths were not prepared for the place " + q);
  }
}
