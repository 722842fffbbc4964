package rodwork.app.operation;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.occlusion.Bite;
import rodwork.anatomy.occlusion.Clearance;
import rodwork.anatomy.occlusion.OcclusionProblem;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.registration.RigidMotion;

/**
 * The opposing scan of an opened cast, and the room to it. Immutable.
 *
 * @param name what messages call it
 * @param bite how the two were laid on a scan of the bite; null: they share one frame
 * @param clearance of the cast, along its occlusal direction
 * @param covered share of the places of the cast that look to the occlusal side over which it lies
 */
public record OpposingScan(String name, @Nullable Bite bite, Clearance clearance, double covered) {
  /** Less cover tells that the scans do not share one frame; a quadrant's scan covers more. */
  private static final double LEAST_COVER = 0.05;

  private static final double SAME_MM = 0.02;
  private static final double SAME_SHARE = 0.5;

  /** Places looked at to see whether the two scans belong together. */
  private static final int PROBES = 4_000;

  /** Facing the occlusal side [cosine]. */
  private static final double UP = 0.5;

  /**
   * Lays an opposing scan over a cast.
   *
   * @param opposing its own arch frame is needed only where there is a bite scan
   * @param bite a scan of both in occlusion; null: cast and opposing scan share one frame
   * @throws rodwork.geometry.Refusal if a frame that is needed is not known, or the scans do not
   *     belong together; see {@link OcclusionProblem}
   */
  public static OpposingScan of(
      OpenedCast cast, OpenedCast opposing, @Nullable Cast bite, Watch watch) {
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    Bite laid = bite == null ? null : Bite.of(side(cast), side(opposing), bite.mesh(), watch);
    RigidMotion toCast = laid == null ? RigidMotion.NONE : laid.toCast();
    Clearance clearance = Clearance.of(arch, opposing.mesh(), toCast);
    double same = same(cast.mesh(), TriangleTree.of(opposing.mesh()), toCast.inverse());
    if (same > SAME_SHARE) {
      throw OcclusionProblem.OPPOSING_IS_CAST.with(100 * same, SAME_MM);
    }
    double covered = covered(cast, clearance);
    if (covered < LEAST_COVER) {
      throw OcclusionProblem.OPPOSING_ELSEWHERE.with(100 * covered, 100 * LEAST_COVER);
    }
    return new OpposingScan(opposing.name(), laid, clearance, covered);
  }

  /**
   * What it tells of the room to the opposing teeth.
   *
   * @param scanAccuracyMm of one scan
   */
  public OpposingRoom room(double scanAccuracyMm) {
    double scans = Math.hypot(scanAccuracyMm, scanAccuracyMm);
    return new OpposingRoom(
        Optional.of(clearance),
        bite == null
            ? scans
            : Math.hypot(scans, Math.hypot(bite.onCast().rmsMm(), bite.onOpposing().rmsMm())));
  }

  /** The same scan over the cast in another frame. */
  public OpposingScan over(OpenedCast cast) {
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    Clearance turned = clearance.over(arch);
    return new OpposingScan(name, bite, turned, covered(cast, turned));
  }

  private static Bite.Side side(OpenedCast cast) {
    return new Bite.Side(cast.mesh(), cast.frame());
  }

  private static double same(TriangleMesh mesh, TriangleTree other, RigidMotion toOther) {
    int step = Math.max(1, mesh.vertexCount() / PROBES);
    int all = 0;
    int on = 0;
    for (int v = 0; v < mesh.vertexCount(); v += step) {
      all++;
      on += other.closest(toOther.point(mesh.vertex(v)), SAME_MM).isPresent() ? 1 : 0;
    }
    return all == 0 ? 0 : (double) on / all;
  }

  private static double covered(OpenedCast cast, Clearance clearance) {
    TriangleMesh mesh = cast.mesh();
    AnatomicSurface surface = cast.surface();
    Vec3 up = cast.frame().z();
    int step = Math.max(1, mesh.triangleCount() / PROBES);
    double all = 0;
    double known = 0;
    for (int t = 0; t < mesh.triangleCount(); t += step) {
      Vec3 normal = mesh.doubleAreaNormal(t);
      if (!surface.isBase(t) && normal.dot(up) > UP * normal.length()) {
        all += normal.length();
        known +=
            Double.isNaN(clearance.at(mesh.pointOn(t, 1 / 3.0, 1 / 3.0))) ? 0 : normal.length();
      }
    }
    return all > 0 ? known / all : 0;
  }
}
