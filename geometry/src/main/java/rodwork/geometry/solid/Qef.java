package rodwork.geometry.solid;

/**
 * Where a vertex of a cell belongs: the point nearest to all the planes that touch the surface
 * where it crosses the cell's edges, in the least-squares sense.
 *
 * <p>Where the planes agree (a smooth surface) only the distance across the surface is taken from
 * them, and the mean of the crossings decides the rest; on an edge or a corner of the body the
 * vertex moves there. Source: Ju, Losasso, Schaefer, Warren, "Dual contouring of Hermite data",
 * SIGGRAPH 2002; directions whose eigenvalue is below a twentieth of the largest are left at the
 * mean (a tenth there, which blunts edges of 150° and flatter).
 */
final class Qef {
  private static final double LEAST_EIGENVALUE_SHARE = 0.05;

  private Qef() {}

  /** Numbers kept for each vertex: 3 of the sum, 6 of the matrix, 3 of the right side, 1 count. */
  static final int STRIDE = 13;

  /** Adds the plane through a crossing to the sums at {@code at}. */
  static void add(double[] sums, int at, double[] crossing, int c) {
    double x = crossing[c];
    double y = crossing[c + 1];
    double z = crossing[c + 2];
    double a = crossing[c + 3];
    double b = crossing[c + 4];
    double g = crossing[c + 5];
    double d = a * x + b * y + g * z;
    sums[at] += x;
    sums[at + 1] += y;
    sums[at + 2] += z;
    sums[at + 3] += a * a;
    sums[at + 4] += a * b;
    sums[at + 5] += a * g;
    sums[at + 6] += b * b;
    sums[at + 7] += b * g;
    sums[at + 8] += g * g;
    sums[at + 9] += a * d;
    sums[at + 10] += b * d;
    sums[at + 11] += g * d;
    sums[at + 12] += 1;
  }

  /** Writes the vertex for the sums at {@code at} to {@code xyz[v], xyz[v+1], xyz[v+2]}. */
  static void solve(double[] sums, int at, double[] xyz, int v) {
    double count = sums[at + 12];
    double mx = sums[at] / count;
    double my = sums[at + 1] / count;
    double mz = sums[at + 2] / count;
    double[] m = {
      sums[at + 3], sums[at + 4], sums[at + 5],
      sums[at + 4], sums[at + 6], sums[at + 7],
      sums[at + 5], sums[at + 7], sums[at + 8]
    };
    double[] rest = {
      sums[at + 9] - (m[0] * mx + m[1] * my + m[2] * mz),
      sums[at + 10] - (m[3] * mx + m[4] * my + m[5] * mz),
      sums[at + 11] - (m[6] * mx + m[7] * my + m[8] * mz)
    };
    double[] vectors = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    jacobi(m, vectors);
    double largest = Math.max(m[0], Math.max(m[4], m[8]));
    double[] step = new double[3];
    for (int k = 0; k < 3; k++) {
      double eigenvalue = m[4 * k];
      if (eigenvalue > LEAST_EIGENVALUE_SHARE * largest) {
        double along =
            (vectors[k] * rest[0] + vectors[3 + k] * rest[1] + vectors[6 + k] * rest[2])
                / eigenvalue;
        step[0] += along * vectors[k];
        step[1] += along * vectors[3 + k];
        step[2] += along * vectors[6 + k];
      }
    }
    xyz[v] = mx + step[0];
    xyz[v + 1] = my + step[1];
    xyz[v + 2] = mz + step[2];
  }

  /** Turns the symmetric 3×3 matrix to its diagonal; the columns of {@code vectors} follow. */
  private static void jacobi(double[] m, double[] vectors) {
    for (int sweep = 0; sweep < 8; sweep++) {
      double off = m[1] * m[1] + m[2] * m[2] + m[5] * m[5];
      if (off <= 1e-24 * (m[0] * m[0] + m[4] * m[4] + m[8] * m[8])) {
        return;
      }
      for (int p = 0; p < 2; p++) {
        for (int q = p + 1; q < 3; q++) {
          rotate(m, vectors, p, q);
        }
      }
    }
  }

  private static void rotate(double[] m, double[] vectors, int p, int q) {
    double pq = m[3 * p + q];
    if (pq == 0) {
      return;
    }
    double theta = (m[4 * q] - m[4 * p]) / (2 * pq);
    double t = Math.copySign(1 / (Math.abs(theta) + Math.sqrt(theta * theta + 1)), theta);
    double c = 1 / Math.sqrt(t * t + 1);
    double s = t * c;
    for (int k = 0; k < 3; k++) {
      double kp = m[3 * k + p];
      double kq = m[3 * k + q];
      m[3 * k + p] = c * kp - s * kq;
      m[3 * k + q] = s * kp + c * kq;
    }
    for (int k = 0; k < 3; k++) {
      double pk = m[3 * p + k];
      double qk = m[3 * q + k];
      m[3 * p + k] = c * pk - s * qk;
      m[3 * q + k] = s * pk + c * qk;
      double vp = vectors[3 * k + p];
      double vq = vectors[3 * k + q];
      vectors[3 * k + p] = c * vp - s * vq;
      vectors[3 * k + q] = s * vp + c * vq;
    }
  }
}
