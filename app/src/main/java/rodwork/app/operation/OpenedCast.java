package rodwork.app.operation;

import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.ArchFrameFinder;
import rodwork.anatomy.FrameFinding;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.space.SpaceRules;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/**
 * A cast that was taken in, with its base and, where it could be found, its arch frame. Immutable.
 *
 * @param name what messages call it
 * @param cast the mended scan
 * @param surface which part of it is anatomy
 * @param jaw which arch it is, or unknown
 * @param finding the arch frame; null where it is not sure
 * @param frameProblem why there is none; null where there is one
 * @param surveyor surveys it
 * @param spaces which room between its teeth is a space
 */
public record OpenedCast(
    String name,
    Cast cast,
    AnatomicSurface surface,
    Jaw jaw,
    @Nullable FrameFinding finding,
    @Nullable Refusal frameProblem,
    Surveyor surveyor,
    SpaceRules spaces) {
  /** Directions that were written down and read again are off by less: a hundredth of a degree. */
  private static final double SAME_DIRECTION = 2e-4;

  static OpenedCast of(String name, Cast cast, Jaw jaw, FrameHints hints) {
    AnatomicSurface surface = AnatomicSurface.of(cast.topology());
    // What the surveyor needs of the mesh and the search for the frame take about as long, and
    // neither needs the other.
    CompletableFuture<Surveyor> surveyor =
        CompletableFuture.supplyAsync(
            () -> Surveyor.of(cast.topology(), surface, null, SurveyRules.SHIPPED));
    FrameFinding found = null;
    Refusal unsure = null;
    try {
      found = ArchFrameFinder.find(cast.topology(), surface, jaw, hints);
    } catch (Refusal refused) {
      unsure = refused;
    }
    Surveyor ready = surveyor.join();
    return new OpenedCast(
        name,
        cast,
        surface,
        jaw,
        found,
        unsure,
        found == null ? ready : ready.withFrame(found.frame()),
        SpaceRules.SHIPPED);
  }

  /** The same cast with its frame found anew from what a person says. */
  public OpenedCast withFrame(Jaw otherJaw, FrameHints hints) {
    try {
      FrameFinding found = ArchFrameFinder.find(cast.topology(), surface, otherJaw, hints);
      return new OpenedCast(
          name, cast, surface, otherJaw, found, null, surveyor.withFrame(found.frame()), spaces);
    } catch (Refusal unsure) {
      return new OpenedCast(
          name,
          cast,
          surface,
          otherJaw,
          null,
          unsure,
          Surveyor.of(cast.topology(), surface, null, surveyor.rules()),
          spaces);
    }
  }

  /** The same cast, whose occlusal direction a person took as known only so well [± degrees]. */
  public OpenedCast knownWithin(double upDeg) {
    FrameFinding found = finding;
    if (found == null) {
      return this;
    }
    FrameFinding said = found.withUpUncertainty(upDeg);
    return new OpenedCast(
        name, cast, surface, jaw, said, frameProblem, surveyor.withFrame(said.frame()), spaces);
  }

  /** The same cast with its jaw known. */
  OpenedCast withJaw(Jaw known) {
    FrameFinding found = finding;
    if (found == null || jaw == known) {
      return this;
    }
    FrameFinding turned = found.withJaw(known);
    return new OpenedCast(
        name,
        cast,
        surface,
        known,
        turned,
        frameProblem,
        surveyor.withFrame(turned.frame()),
        spaces);
  }

  /**
   * The same cast with its vertices moved and its triangles as they were: frame and anatomic
   * surface stay, the survey is that of the new shape.
   *
   * @param otherName what messages call it
   */
  public OpenedCast shaped(String otherName, TriangleMesh moved) {
    MeshTopology topology = MeshTopology.of(moved);
    FrameFinding found = finding;
    return new OpenedCast(
        otherName,
        new Cast(topology, cast.loops(), cast.files(), cast.report()),
        surface,
        jaw,
        finding,
        frameProblem,
        Surveyor.of(topology, surface, found == null ? null : found.frame(), surveyor.rules()),
        spaces);
  }

  /** The same cast by the rules of a rulebook. */
  public OpenedCast by(Rulebook book) {
    if (book.survey().equals(surveyor.rules()) && book.spaces().equals(spaces)) {
      return this;
    }
    FrameFinding found = finding;
    return new OpenedCast(
        name,
        cast,
        surface,
        jaw,
        finding,
        frameProblem,
        book.survey().equals(surveyor.rules())
            ? surveyor
            : Surveyor.of(
                cast.topology(), surface, found == null ? null : found.frame(), book.survey()),
        book.spaces());
  }

  /**
   * Whether a scan was understood like another opening of the same file: in the same unit of
   * length, as the same jaw, with the same arch frame.
   */
  public boolean readAs(OpenedCast other) {
    FrameFinding mine = finding;
    FrameFinding its = other.finding;
    if (jaw != other.jaw || mesh().vertexCount() != other.mesh().vertexCount()) {
      return false;
    }
    for (int v = 0; v < mesh().vertexCount(); v++) {
      if (mesh().x(v) != other.mesh().x(v)) {
        return false;
      }
    }
    if (mine == null || its == null) {
      return mine == null && its == null;
    }
    return alike(mine.frame().z(), its.frame().z()) && alike(mine.frame().y(), its.frame().y());
  }

  private static boolean alike(Vec3 a, Vec3 b) {
    return a.distance(b) < SAME_DIRECTION;
  }

  public TriangleMesh mesh() {
    return cast.mesh();
  }

  /**
   * The arch frame.
   *
   * @throws Refusal if it is not sure
   */
  public ArchFrame frame() {
    FrameFinding found = finding;
    if (found == null) {
      throw frameProblem == null ? new IllegalStateException("no frame, no reason") : frameProblem;
    }
    return found.frame();
  }
}
