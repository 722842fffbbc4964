package rodwork.survey.tripod;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.registration.Registration;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.registration.ScanMatch;
import rodwork.geometry.registration.SurfaceSample;

/**
 * A whole rescan laid on the first scan, so that path and frame are carried over and never
 * estimated anew.
 *
 * @param match from the first scan's frame to the rescan's, with its residuals
 */
public record Rescan(Registration match) {
  private static final int POINTS = 12_000;

  /** One scan to be laid: its mesh, what counts of it, and its frame where that is known. */
  public record Side(TriangleMesh mesh, AnatomicSurface surface, @Nullable ArchFrame frame) {
    private List<Vec3> points() {
      return SurfaceSample.of(mesh, t -> !surface.isBase(t), POINTS);
    }
  }

  /**
   * Lays the rescan on the first scan.
   *
   * @throws Refusal if they do not fit
   */
  public static Rescan of(Side first, Side again, TripodRules rules, Watch watch) {
    List<RigidMotion> near = new ArrayList<>();
    if (first.frame() != null && again.frame() != null) {
      near.add(ofFrame(first.frame()).after(ofFrame(again.frame()).inverse()));
    }
    Registration laid =
        ScanMatch.find(again.points(), TriangleTree.of(first.mesh()), first.points(), near, watch);
    if (laid.share() < rules.fitShare().value()) {
      throw TripodProblem.RESCAN.with(
          100 * laid.share(),
          Registration.NEAR_MM,
          100 * rules.fitShare().value(),
          laid.medianMm());
    }
    return new Rescan(
        new Registration(
            laid.motion().inverse(), laid.medianMm(), laid.rmsMm(), laid.share(), laid.points()));
  }

  /** The motion from an arch frame to the scan frame. */
  private static RigidMotion ofFrame(ArchFrame frame) {
    Vec3 x = frame.x().unit();
    Vec3 y = frame.y().across(x).unit();
    RigidMotion into = new RigidMotion(x, y, x.cross(y), Vec3.ZERO);
    return RigidMotion.shift(frame.origin()).after(into.inverse());
  }

  /** The withdrawal axis in the rescan's frame [unit vector]. */
  public Vec3 axis(Vec3 axisOfFirst) {
    return match.motion().direction(axisOfFirst).unit();
  }

  /** The frame of the first scan in the rescan's frame. */
  public ArchFrame frame(ArchFrame first) {
    Vec3 z = match.motion().direction(first.z()).unit();
    return new ArchFrame(
        match.motion().point(first.origin()),
        match.motion().direction(first.y()).across(z).unit(),
        z,
        first.jaw(),
        first.upUncertaintyDeg(),
        first.frontUncertaintyDeg());
  }
}
