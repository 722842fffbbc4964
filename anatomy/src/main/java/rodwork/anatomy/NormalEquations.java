package rodwork.anatomy;

/**
 * Weighted linear least squares with a handful of unknowns: rows are added one by one, the normal
 * equations are solved by Cholesky's method.
 *
 * <p>Squares the condition number: meant for a few well-scaled unknowns, not for more.
 */
final class NormalEquations {
  private final int n;
  private final double[] matrix;
  private final double[] right;

  NormalEquations(int unknowns) {
    this.n = unknowns;
    this.matrix = new double[unknowns * unknowns];
    this.right = new double[unknowns];
  }

  /** Adds the equation {@code row · unknowns = value} with a weight ≥ 0. */
  void add(double[] row, double value, double weight) {
    for (int i = 0; i < n; i++) {
      double w = weight * row[i];
      right[i] += w * value;
      for (int j = 0; j <= i; j++) {
        matrix[i * n + j] += w * row[j];
      }
    }
  }

  /** Pulls one unknown towards 0 with a weight. */
  void damp(int unknown, double weight) {
    matrix[unknown * n + unknown] += weight;
  }

  /** The diagonal entry of an unknown, the scale that a damping refers to. */
  double diagonal(int unknown) {
    return matrix[unknown * n + unknown];
  }

  /** The unknowns, or an empty array where the rows do not determine them. */
  double[] solve() {
    double[] l = new double[n * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = matrix[i * n + j];
        for (int k = 0; k < j; k++) {
          sum -= l[i * n + k] * l[j * n + k];
        }
        if (i == j) {
          if (!(sum > 1e-12 * matrix[i * n + i])) {
            return new double[0];
          }
          l[i * n + i] = Math.sqrt(sum);
        } else {
          l[i * n + j] = sum / l[j * n + j];
        }
      }
    }
    double[] x = right.clone();
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= l[i * n + k] * x[k];
      }
      x[i] /= l[i * n + i];
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int k = i + 1; k < n; k++) {
        x[i] -= l[k * n + i] * x[k];
      }
      x[i] /= l[i * n + i];
    }
    return x;
  }
}
