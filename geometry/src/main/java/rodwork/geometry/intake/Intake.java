package rodwork.geometry.intake;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Watch;
import rodwork.geometry.io.RawMesh;

/**
 * Makes a cast of what a file holds: mends, finds the unit, and tells both.
 *
 * <p>A file with nothing to mend, in mm, becomes a cast with exactly its vertices and triangles in
 * its order.
 */
public final class Intake {
  private Intake() {}

  /**
   * Takes a file's mesh in.
   *
   * @throws rodwork.geometry.Refusal with a code of {@link IntakeProblem} where it cannot be mended
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static Cast of(RawMesh raw, IntakeOptions options, Watch watch) {
    List<Remark> remarks = new ArrayList<>();
    Draft draft = new Draft(raw);
    mendTriangles(raw, draft, remarks, watch);
    step(watch, "turning triangles", 0.4);
    // Islands may lie far away, so they go before the span is taken.
    Islands.mend(draft, options.islandShare(), remarks);
    Winding.mend(draft, remarks);
    step(watch, "closing pinholes", 0.6);
    Pinholes.fill(draft, options.pinholeEdges(), remarks);
    step(watch, "measuring", 0.7);
    UnitFinding unit = UnitChoice.find(raw, draft.span(), options.unit(), remarks);
    Cast cast = new CastAssembly(raw, draft, unit, remarks).cast();
    watch.progress("taken in", 1);
    return cast;
  }

  private static void mendTriangles(RawMesh raw, Draft draft, List<Remark> remarks, Watch watch) {
    step(watch, "mending vertices", 0);
    int all = draft.triangleCount();
    VertexMending.dropBad(raw, draft, remarks);
    int bad = all - draft.triangleCount();
    if (raw.facts().indexed()) {
      VertexMending.weld(draft, remarks);
    }
    step(watch, "mending triangles", 0.2);
    int without = TriangleMending.dropCollapsed(draft, remarks);
    TriangleMending.dropRepeated(draft, remarks);
    without += TriangleMending.mendFlat(draft, remarks);
    if (draft.triangleCount() == 0) {
      throw IntakeProblem.NO_TRIANGLES_LEFT.refusal(raw.facts().name(), all, bad, without);
    }
  }

  private static void step(Watch watch, String what, double share) {
    watch.check();
    watch.progress(what, share);
  }
}
