package rodwork.anatomy.occlusion;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.registration.ClosestPoints;
import rodwork.geometry.registration.Registration;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.registration.ScanMatch;
import rodwork.geometry.registration.SurfaceSample;

/**
 * How two casts bite, told by a scan of both together: each is laid on its share of the bite scan.
 *
 * @param onCast how the bite scan lies on the cast: from the frame of the bite scan to the cast's
 * @param onOpposing how it lies on the opposing cast
 * @param explained share of the bite scan that lies within {@link Registration#NEAR_MM} of one of
 *     the two
 */
public record Bite(Registration onCast, Registration onOpposing, double explained) {
  private static final int POINTS = 12_000;

  /** So many of them do until the casts lie nearly right. */
  private static final int FEW = 1_500;

  /** About how much of a bite scan is of one jaw; less still serves. */
  private static final double SHARE_OF_A_JAW = 0.35;

  /** Less of the bite scan on one jaw tells no pose; found on made bites of real arches. */
  private static final double LEAST_SHARE = 0.12;

  /** Less of it on the two together, and one of them lies wrong. */
  private static final double LEAST_EXPLAINED = 0.6;

  /** How high and low over the biting surfaces a bite scan shows the two arches [mm]. */
  private static final double SEEN_MM = 10;

  /** A surface that faces out of the arch at least so much is seen from outside [cosine]. */
  private static final double SEEN_COSINE = 0.3;

  /** A place this far behind the middle of an arch lies amid it [mm]. */
  private static final double AMID_MM = 10;

  /** How far off the turned arches may lie, and the steps by which they are drawn in [mm]. */
  private static final double[] REACHES_MM = {6, 3, 1};

  /**
   * Lays both casts on a scan of their bite. Where neither shares its frame the scan must show most
   * of the arch from outside: a first guess turns one arch over upon the other, as their frames
   * lie, and looks for the whole bite scan on the two.
   *
   * @throws rodwork.geometry.Refusal {@link OcclusionProblem#BITE_UNSURE}
   */
  public static Bite of(Side cast, Side opposing, TriangleMesh bite, Watch watch) {
    List<Vec3> points = SurfaceSample.of(bite, _ -> true, POINTS);
    if (points.isEmpty()) {
      throw OcclusionProblem.BITE_UNSURE.with(
          0.0, 0.0, 0.0, Registration.NEAR_MM, 100 * LEAST_SHARE, 100 * LEAST_EXPLAINED);
    }
    TriangleTree castTree = TriangleTree.of(cast.mesh);
    TriangleTree otherTree = TriangleTree.of(opposing.mesh);
    RigidMotion over = over(cast.frame, opposing.frame);
    TriangleMesh both = joined(cast.mesh, opposing.mesh, over);
    RigidMotion guess =
        ScanMatch.find(
                points,
                TriangleTree.of(both),
                SurfaceSample.of(both, t -> seen(both, t, cast.frame), POINTS),
                List.of(RigidMotion.NONE, over),
                watch)
            .motion();
    Registration onCast = drawnIn(points, castTree, guess, watch);
    Registration onOther = drawnIn(points, otherTree, over.inverse().after(guess), watch);
    long near =
        points.parallelStream()
            .filter(p -> near(castTree, onCast, p) || near(otherTree, onOther, p))
            .count();
    double explained = (double) near / points.size();
    if (Math.min(onCast.share(), onOther.share()) < LEAST_SHARE || explained < LEAST_EXPLAINED) {
      throw OcclusionProblem.BITE_UNSURE.with(
          100 * onCast.share(),
          100 * onOther.share(),
          100 * explained,
          Registration.NEAR_MM,
          100 * LEAST_SHARE,
          100 * LEAST_EXPLAINED);
    }
    return new Bite(onCast, onOther, explained);
  }

  /** One of the two casts, with its arch frame; whether it is upper or lower does not matter. */
  public record Side(TriangleMesh mesh, ArchFrame frame) {}

  /** Lays the opposing cast on the cast as they bite. */
  public RigidMotion toCast() {
    return onCast.motion().after(onOpposing.motion().inverse());
  }

  /** Turns the opposing arch over upon the cast, front on front. */
  private static RigidMotion over(ArchFrame cast, ArchFrame opposing) {
    RigidMotion turned = RigidMotion.turn(Vec3.Y, Math.PI);
    return intoArch(cast).inverse().after(turned.after(intoArch(opposing)));
  }

  private static RigidMotion intoArch(ArchFrame frame) {
    Vec3 z = frame.z().unit();
    Vec3 y = frame.y().across(z).unit();
    return new RigidMotion(y.cross(z), y, z, Vec3.ZERO)
        .after(RigidMotion.shift(frame.origin().times(-1)));
  }

  private static boolean seen(TriangleMesh mesh, int triangle, ArchFrame frame) {
    Vec3 at = frame.toArch(mesh.pointOn(triangle, 1 / 3.0, 1 / 3.0).minus(frame.origin()));
    Vec3 n = frame.toArch(mesh.doubleAreaNormal(triangle));
    Vec3 out = new Vec3(at.x(), at.y() + AMID_MM, 0);
    return Math.abs(at.z()) < SEEN_MM && n.dot(out) > SEEN_COSINE * n.length() * out.length();
  }

  private static TriangleMesh joined(TriangleMesh cast, TriangleMesh opposing, RigidMotion over) {
    int first = cast.vertexCount();
    double[] xyz = Arrays.copyOf(cast.copyOfCoordinates(), 3 * (first + opposing.vertexCount()));
    for (int v = 0; v < opposing.vertexCount(); v++) {
      Vec3 p = over.point(opposing.vertex(v));
      xyz[3 * (first + v)] = p.x();
      xyz[3 * (first + v) + 1] = p.y();
      xyz[3 * (first + v) + 2] = p.z();
    }
    int[] corners =
        IntStream.concat(
                Arrays.stream(cast.copyOfCorners()),
                Arrays.stream(opposing.copyOfCorners()).map(v -> v + first))
            .toArray();
    return TriangleMesh.of(xyz, corners);
  }

  private static Registration drawnIn(
      List<Vec3> points, TriangleTree tree, RigidMotion start, Watch watch) {
    ClosestPoints closest = new ClosestPoints(tree, SHARE_OF_A_JAW);
    RigidMotion at = start;
    List<Vec3> few =
        IntStream.range(0, FEW).mapToObj(i -> points.get(i * points.size() / FEW)).toList();
    for (double reach : REACHES_MM) {
      at = closest.refine(few, at, reach, watch).motion();
    }
    return closest.refine(points, at, REACHES_MM[REACHES_MM.length - 1], watch);
  }

  private static boolean near(TriangleTree tree, Registration laid, Vec3 point) {
    return tree.closest(laid.motion().point(point), Registration.NEAR_MM)
        .map(SurfacePoint::distance)
        .isPresent();
  }
}
