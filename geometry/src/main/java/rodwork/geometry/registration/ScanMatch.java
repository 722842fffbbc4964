package rodwork.geometry.registration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleTree;

/**
 * Finds how one scan lies on another in any pose: first guesses from the shape as a whole, each
 * refined on few points, the best ones on many.
 *
 * <p>First guesses: the motions that are known to be near, and the principal axes of both surfaces
 * laid on each other, turned in steps about the shortest one both ways up, for the main axes of a
 * cut scan may lie some way off.
 */
public final class ScanMatch {
  private static final int TURNS = 12;
  private static final int COARSE_POINTS = 300;
  private static final int MIDDLE_POINTS = 1_500;
  private static final int FINE_POINTS = 12_000;
  private static final int KEPT = 3;

  private ScanMatch() {}

  /**
   * Finds the motion.
   *
   * @param moving points spread evenly over the moving scan [mm]; see {@link SurfaceSample}
   * @param fixed the scan it is laid on
   * @param fixedPoints points spread evenly over what counts of it [mm]
   * @param near motions that are thought to be near; may be empty
   * @return the best match found, good or bad: judge it by its figures
   */
  public static Registration find(
      List<Vec3> moving,
      TriangleTree fixed,
      List<Vec3> fixedPoints,
      List<RigidMotion> near,
      Watch watch) {
    ClosestPoints closest = new ClosestPoints(fixed);
    List<RigidMotion> starts = new ArrayList<>(near);
    starts.addAll(principal(moving, fixedPoints));
    List<Vec3> coarse = thinned(moving, COARSE_POINTS);
    List<Registration> found = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      watch.progress("laying the scans on each other", 0.8 * i / starts.size());
      found.add(closest.refine(coarse, starts.get(i), 15, watch));
    }
    found.sort(Comparator.comparingDouble(Registration::medianMm));
    Registration best = null;
    for (Registration r : found.subList(0, Math.min(KEPT, found.size()))) {
      Registration finer = closest.refine(thinned(moving, MIDDLE_POINTS), r.motion(), 5, watch);
      if (best == null || finer.share() > best.share()) {
        best = finer;
      }
    }
    if (best == null) {
      throw new IllegalArgumentException("no first guess");
    }
    watch.progress("laying the scans on each other", 0.9);
    return closest.refine(thinned(moving, FINE_POINTS), best.motion(), 1, watch);
  }

  private static List<Vec3> thinned(List<Vec3> points, int count) {
    if (points.size() <= count) {
      return points;
    }
    List<Vec3> some = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      some.add(points.get((int) ((long) i * points.size() / count)));
    }
    return some;
  }

  private static List<RigidMotion> principal(List<Vec3> moving, List<Vec3> fixed) {
    RigidMotion from = axes(moving).inverse();
    RigidMotion to = axes(fixed);
    List<RigidMotion> starts = new ArrayList<>();
    for (int flip = 0; flip < 2; flip++) {
      for (int k = 0; k < TURNS; k++) {
        RigidMotion turn = RigidMotion.turn(Vec3.Z, 2 * Math.PI * k / TURNS);
        RigidMotion whole = flip == 0 ? turn : RigidMotion.turn(Vec3.X, Math.PI).after(turn);
        starts.add(to.after(whole).after(from));
      }
    }
    return starts;
  }

  /** The motion from the frame of the principal axes (longest first) to that of the points. */
  private static RigidMotion axes(List<Vec3> points) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : points) {
      sum = sum.plus(p);
    }
    Vec3 middle = sum.times(1.0 / points.size());
    DMatrixRMaj m = new DMatrixRMaj(3, 3);
    for (Vec3 p : points) {
      Vec3 q = p.minus(middle);
      double[] c = {q.x(), q.y(), q.z()};
      for (int r = 0; r < 3; r++) {
        for (int k = 0; k < 3; k++) {
          m.add(r, k, c[r] * c[k]);
        }
      }
    }
    var eigen = DecompositionFactory_DDRM.eig(3, true, true);
    if (!eigen.decompose(m)) {
      return RigidMotion.shift(middle);
    }
    Integer[] order = {0, 1, 2};
    java.util.Arrays.sort(
        order, Comparator.comparingDouble(i -> -eigen.getEigenvalue(i).getReal()));
    Vec3 x = vector(eigen.getEigenVector(order[0]));
    Vec3 y = vector(eigen.getEigenVector(order[1])).across(x).unit();
    // Columns are the axes, so that (1, 0, 0) goes to the longest one.
    RigidMotion into = new RigidMotion(x, y, x.cross(y), Vec3.ZERO);
    RigidMotion out = into.inverse();
    return new RigidMotion(out.rowX(), out.rowY(), out.rowZ(), middle);
  }

  private static Vec3 vector(DMatrixRMaj v) {
    return new Vec3(v.get(0), v.get(1), v.get(2)).unit();
  }
}
