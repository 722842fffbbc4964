package rodwork.anatomy.teeth;

import rodwork.geometry.Watch;

/**
 * How likely a walk over the triangles first comes to the seeds of a label: the harmonic function
 * that is 1 on them and 0 on all other seeds (Grady, "Random Walks for Image Segmentation", IEEE
 * Trans. Pattern Anal. Mach. Intell. 28, 2006), by conjugate gradients with the diagonal as
 * preconditioner.
 */
final class RandomWalker {
  private static final int MOST_ROUNDS = 1500;
  private static final double SMALL = 1e-6;

  private final ConcavityGraph graph;
  private final int[] seed;

  /**
   * A walk that ends at seeds.
   *
   * @param seed of each triangle, −1 where it is to be found
   */
  RandomWalker(ConcavityGraph graph, int[] seed) {
    this.graph = graph;
    this.seed = seed.clone();
  }

  double[] chance(int label, Watch watch) {
    int n = seed.length;
    double[] diagonal = new double[n];
    double[] x = new double[n];
    double[] r = new double[n];
    double[] z = new double[n];
    for (int t = 0; t < n; t++) {
      x[t] = seed[t] == label ? 1 : 0;
      for (int k = 0; k < 3; k++) {
        diagonal[t] += graph.weight[3 * t + k];
      }
    }
    double rz = 0;
    for (int t = 0; t < n; t++) {
      if (seed[t] < 0 && diagonal[t] > 0) {
        for (int k = 0; k < 3; k++) {
          int u = graph.neighbour[3 * t + k];
          r[t] += u < 0 ? 0 : graph.weight[3 * t + k] * x[u];
        }
        z[t] = r[t] / diagonal[t];
        rz += r[t] * z[t];
      }
    }
    double[] p = z.clone();
    double[] ap = new double[n];
    double enough = rz * SMALL * SMALL;
    for (int round = 0; round < MOST_ROUNDS && rz > enough; round++) {
      watch.check();
      double pap = 0;
      for (int t = 0; t < n; t++) {
        if (seed[t] < 0) {
          double sum = diagonal[t] * p[t];
          for (int k = 0; k < 3; k++) {
            int u = graph.neighbour[3 * t + k];
            sum -= u < 0 ? 0 : graph.weight[3 * t + k] * p[u];
          }
          ap[t] = sum;
          pap += sum * p[t];
        }
      }
      double step = rz / pap;
      double next = 0;
      for (int t = 0; t < n; t++) {
        if (seed[t] < 0 && diagonal[t] > 0) {
          x[t] += step * p[t];
          r[t] -= step * ap[t];
          z[t] = r[t] / diagonal[t];
          next += r[t] * z[t];
        }
      }
      double turn = next / rz;
      rz = next;
      for (int t = 0; t < n; t++) {
        p[t] = z[t] + turn * p[t];
      }
    }
    return x;
  }
}
