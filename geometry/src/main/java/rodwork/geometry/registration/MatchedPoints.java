package rodwork.geometry.registration;

import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import rodwork.geometry.Vec3;

/**
 * The rigid motion that brings points closest to their partners in the sense of least squares.
 *
 * <p>Horn, "Closed-form solution of absolute orientation using unit quaternions", J. Opt. Soc. Am.
 * A 4:629–642, 1987: the quaternion is the eigenvector of the greatest eigenvalue of a symmetric
 * 4×4 matrix of the sums of products.
 */
public final class MatchedPoints {
  private MatchedPoints() {}

  /**
   * Fits.
   *
   * @param from at least three points, not on one line [mm]
   * @param to their partners, in the same order [mm]
   */
  public static RigidMotion fit(List<Vec3> from, List<Vec3> to) {
    int n = from.size();
    if (n < 3 || to.size() != n) {
      throw new IllegalArgumentException(
          "three or more pairs of points are needed: " + n + " and " + to.size());
    }
    Vec3 a = mean(from);
    Vec3 b = mean(to);
    double[][] s = new double[3][3];
    for (int i = 0; i < n; i++) {
      Vec3 p = from.get(i).minus(a);
      Vec3 q = to.get(i).minus(b);
      double[] ps = {p.x(), p.y(), p.z()};
      double[] qs = {q.x(), q.y(), q.z()};
      for (int r = 0; r < 3; r++) {
        for (int c = 0; c < 3; c++) {
          s[r][c] += ps[r] * qs[c];
        }
      }
    }
    DMatrixRMaj m =
        new DMatrixRMaj(
            new double[][] {
              {
                s[0][0] + s[1][1] + s[2][2], s[1][2] - s[2][1], s[2][0] - s[0][2], s[0][1] - s[1][0]
              },
              {
                s[1][2] - s[2][1], s[0][0] - s[1][1] - s[2][2], s[0][1] + s[1][0], s[2][0] + s[0][2]
              },
              {
                s[2][0] - s[0][2], s[0][1] + s[1][0], s[1][1] - s[0][0] - s[2][2], s[1][2] + s[2][1]
              },
              {s[0][1] - s[1][0], s[2][0] + s[0][2], s[1][2] + s[2][1], s[2][2] - s[0][0] - s[1][1]}
            });
    var eigen = DecompositionFactory_DDRM.eig(4, true, true);
    if (!eigen.decompose(m)) {
      throw new IllegalArgumentException("the points have no best fit");
    }
    int best = 0;
    for (int i = 1; i < 4; i++) {
      if (eigen.getEigenvalue(i).getReal() > eigen.getEigenvalue(best).getReal()) {
        best = i;
      }
    }
    DMatrixRMaj q = eigen.getEigenVector(best);
    RigidMotion turn = RigidMotion.ofQuaternion(q.get(0), q.get(1), q.get(2), q.get(3), Vec3.ZERO);
    return new RigidMotion(turn.rowX(), turn.rowY(), turn.rowZ(), b.minus(turn.direction(a)));
  }

  private static Vec3 mean(List<Vec3> points) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : points) {
      sum = sum.plus(p);
    }
    return sum.times(1.0 / points.size());
  }
}
