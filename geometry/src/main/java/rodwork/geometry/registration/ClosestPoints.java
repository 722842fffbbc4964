package rodwork.geometry.registration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleTree;

/**
 * Iterative closest points, point to plane, trimmed.
 *
 * <p>Chen and Medioni, "Object modelling by registration of multiple range images", Image and
 * Vision Computing 10:145–155, 1992 (point to plane); Chetverikov, Stepanov, Krsek, "Robust
 * Euclidean alignment of 3D point sets: the trimmed iterative closest point algorithm", Image and
 * Vision Computing 23:299–309, 2005 (only the nearest share of pairs counts). Ours: the share is
 * that of the pairs nearer than three times the median of what overlaps, so that it follows the
 * overlap.
 */
public final class ClosestPoints {
  private static final int MOST_STEPS = 60;

  /** Steps that turn and shift less than this no longer matter [radians, mm]. */
  private static final double STILL = 1e-7;

  private final TriangleTree fixed;
  private final double overlap;

  public ClosestPoints(TriangleTree fixed) {
    this(fixed, 1);
  }

  /**
   * Where only a part of the moving surface has a partner.
   *
   * @param overlap about how large that part is [above 0 to 1]
   */
  public ClosestPoints(TriangleTree fixed, double overlap) {
    if (!(overlap > 0 && overlap <= 1)) {
      throw new IllegalArgumentException("a share above 0 to 1 overlaps, not " + overlap);
    }
    this.fixed = fixed;
    this.overlap = overlap;
  }

  /**
   * Refines a first guess.
   *
   * @param moving points of the moving surface, in its own frame [mm]; at least 12
   * @param start from the moving frame to the fixed one
   * @param reach pairs farther apart than this never count [mm]
   */
  public Registration refine(List<Vec3> moving, RigidMotion start, double reach, Watch watch) {
    if (moving.size() < 12) {
      throw new IllegalArgumentException("too few points to compare: " + moving.size());
    }
    RigidMotion at = start;
    for (int step = 0; step < MOST_STEPS; step++) {
      watch.check();
      Pairs pairs = pairs(moving, at, reach);
      double[] move = pairs.solve();
      if (move.length == 0) {
        break;
      }
      Vec3 turn = new Vec3(move[0], move[1], move[2]);
      Vec3 shift = new Vec3(move[3], move[4], move[5]);
      Vec3 centre = pairs.centre;
      RigidMotion small =
          turn.length() == 0 ? RigidMotion.NONE : RigidMotion.turn(turn, turn.length());
      RigidMotion about =
          new RigidMotion(
              small.rowX(),
              small.rowY(),
              small.rowZ(),
              centre.minus(small.direction(centre)).plus(shift));
      at = about.after(at);
      if (turn.length() < STILL && shift.length() < STILL) {
        break;
      }
    }
    return measure(moving, at);
  }

  /** How well the moving points lie on the fixed surface after a motion. */
  public Registration measure(List<Vec3> moving, RigidMotion motion) {
    double[] distances =
        IntStream.range(0, moving.size())
            .parallel()
            .mapToDouble(
                i ->
                    fixed
                        .closest(motion.point(moving.get(i)))
                        .map(SurfacePoint::distance)
                        .orElse(Double.POSITIVE_INFINITY))
            .toArray();
    Arrays.sort(distances);
    int near = 0;
    double sum = 0;
    for (double d : distances) {
      if (d <= Registration.NEAR_MM) {
        near++;
        sum += d * d;
      }
    }
    return new Registration(
        motion,
        amid(distances),
        near == 0 ? Double.POSITIVE_INFINITY : Math.sqrt(sum / near),
        (double) near / distances.length,
        distances.length);
  }

  /** The median of what overlaps, of distances in rising order. */
  private double amid(double[] distances) {
    return distances[(int) (overlap * distances.length / 2)];
  }

  private Pairs pairs(List<Vec3> moving, RigidMotion at, double reach) {
    int n = moving.size();
    Vec3[] points = new Vec3[n];
    SurfacePoint[] feet = new SurfacePoint[n];
    IntStream.range(0, n)
        .parallel()
        .forEach(
            i -> {
              points[i] = at.point(moving.get(i));
              Optional<SurfacePoint> foot = fixed.closest(points[i], reach);
              foot.ifPresent(f -> feet[i] = f);
            });
    double[] distances =
        IntStream.range(0, n)
            .filter(i -> feet[i] != null)
            .mapToDouble(i -> feet[i].distance())
            .sorted()
            .toArray();
    double limit = distances.length == 0 ? 0 : Math.max(3 * amid(distances), 1e-9);
    return new Pairs(points, feet, limit);
  }

  /** Matched points and planes, those too far apart left out. */
  private final class Pairs {
    private final Vec3[] points;
    private final SurfacePoint[] feet;
    private final double limit;
    private final Vec3 centre;

    Pairs(Vec3[] points, SurfacePoint[] feet, double limit) {
      this.points = points;
      this.feet = feet;
      this.limit = limit;
      Vec3 sum = Vec3.ZERO;
      for (Vec3 p : points) {
        sum = sum.plus(p);
      }
      centre = sum.times(1.0 / points.length);
    }

    /** Turn [radians] about the centre and shift [mm], six numbers; empty where none is told. */
    double[] solve() {
      DMatrixRMaj a = new DMatrixRMaj(6, 6);
      DMatrixRMaj b = new DMatrixRMaj(6, 1);
      int used = 0;
      for (int i = 0; i < points.length; i++) {
        SurfacePoint foot = feet[i];
        if (foot == null || foot.distance() > limit) {
          continue;
        }
        Vec3 n = fixed.mesh().doubleAreaNormal(foot.triangle());
        if (!(n.length() > 0)) {
          continue;
        }
        n = n.unit();
        Vec3 c = points[i].minus(centre).cross(n);
        double gap = foot.point().minus(points[i]).dot(n);
        double[] row = {c.x(), c.y(), c.z(), n.x(), n.y(), n.z()};
        for (int r = 0; r < 6; r++) {
          for (int k = 0; k < 6; k++) {
            a.add(r, k, row[r] * row[k]);
          }
          b.add(r, 0, row[r] * gap);
        }
        used++;
      }
      var solver = LinearSolverFactory_DDRM.symmPosDef(6);
      DMatrixRMaj x = new DMatrixRMaj(6, 1);
      if (used < 6 || !solver.setA(a) || solver.quality() < 1e-12) {
        return new double[0];
      }
      solver.solve(b, x);
      return x.getData().clone();
    }
  }
}
