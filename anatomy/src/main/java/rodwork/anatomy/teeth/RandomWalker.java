package rodwork.anatomy.teeth;

import java.util.Arrays;
import rodwork.geometry.Watch;

/**
 * How likely a walk over the cells first comes to the seeds of a label: the harmonic function that
 * is 1 on them and 0 on all other seeds (Grady, "Random Walks for Image Segmentation", IEEE Trans.
 * Pattern Anal. Mach. Intell. 28, 2006), with priors as a second pull towards each label (Grady,
 * "Multilabel Random Walker Image Segmentation Using Prior Models", CVPR 2005), by conjugate
 * gradients with the diagonal as preconditioner.
 *
 * <p>The weight of a link falls with the root of its concavity, as at a gingival margin and between
 * teeth. The chances of all labels of a cell add up to 1, so that gum need not be solved for.
 */
final class RandomWalker {
  /** How steeply weights fall with the root of the concavity [mm^½]. */
  private static final double STEEPNESS = 7;

  /** Concavity above this tells no more [1/mm]. */
  private static final double SHARPEST = 2;

  private static final double LEAST_WEIGHT = 1e-7;
  private static final int MOST_ROUNDS = 600;
  private static final double SMALL = 1e-4;

  private final CellGraph graph;
  private final int[] seed;
  private final double[] weight;
  private final double[] diagonal;

  /**
   * A walk that ends at seeds.
   *
   * @param seed of each cell, −1 where it is to be found
   * @param pull of each cell: the sum of its priors over all labels
   */
  RandomWalker(CellGraph graph, int[] seed, double[] pull) {
    this(graph, seed, pull, STEEPNESS, SHARPEST);
  }

  /**
   * A walk at another scale.
   *
   * @param steepness how steeply weights fall with the root of the concavity [mm^½]
   * @param sharpest concavity above this tells no more [1/mm]
   */
  RandomWalker(CellGraph graph, int[] seed, double[] pull, double steepness, double sharpest) {
    this.graph = graph;
    this.seed = seed;
    weight = new double[graph.to.length];
    diagonal = pull.clone();
    for (int c = 0; c < graph.size(); c++) {
      for (int l = graph.start[c]; l < graph.start[c + 1]; l++) {
        double bend = Math.min(sharpest, Math.max(0, graph.concavity[l]));
        double w = graph.length[l] / graph.distance[l] * Math.exp(-steepness * Math.sqrt(bend));
        weight[l] = Math.max(LEAST_WEIGHT, w);
        diagonal[c] += weight[l];
      }
    }
  }

  /**
   * The chance of a label at some cells.
   *
   * @param label whose seeds are walked to
   * @param cells where it may be, all else counts as out of reach; those that are seeds stay
   * @param prior of the label at each of these cells
   * @return chance at each of these cells [0 to 1]
   */
  double[] chance(int label, int[] cells, double[] prior, Watch watch) {
    int n = cells.length;
    int[] local = new int[graph.size()];
    Arrays.fill(local, -1);
    for (int i = 0; i < n; i++) {
      local[cells[i]] = i;
    }
    double[] x = new double[n];
    double[] r = new double[n];
    double[] z = new double[n];
    boolean[] open = new boolean[n];
    for (int i = 0; i < n; i++) {
      open[i] = seed[cells[i]] < 0 && diagonal[cells[i]] > 0;
      x[i] = seed[cells[i]] == label ? 1 : 0;
    }
    double rz = 0;
    for (int i = 0; i < n; i++) {
      if (open[i]) {
        int c = cells[i];
        r[i] = prior[i];
        for (int l = graph.start[c]; l < graph.start[c + 1]; l++) {
          r[i] += seed[graph.to[l]] == label ? weight[l] : 0;
        }
        z[i] = r[i] / diagonal[c];
        rz += r[i] * z[i];
      }
    }
    double[] p = z.clone();
    double[] ap = new double[n];
    double enough = rz * SMALL * SMALL;
    for (int round = 0; round < MOST_ROUNDS && rz > enough; round++) {
      watch.check();
      double pap = 0;
      for (int i = 0; i < n; i++) {
        if (open[i]) {
          int c = cells[i];
          double sum = diagonal[c] * p[i];
          for (int l = graph.start[c]; l < graph.start[c + 1]; l++) {
            int j = local[graph.to[l]];
            sum -= j < 0 || !open[j] ? 0 : weight[l] * p[j];
          }
          ap[i] = sum;
          pap += sum * p[i];
        }
      }
      double step = rz / pap;
      double next = 0;
      for (int i = 0; i < n; i++) {
        if (open[i]) {
          x[i] += step * p[i];
          r[i] -= step * ap[i];
          z[i] = r[i] / diagonal[cells[i]];
          next += r[i] * z[i];
        }
      }
      double turn = next / rz;
      rz = next;
      for (int i = 0; i < n; i++) {
        p[i] = z[i] + turn * p[i];
      }
    }
    return x;
  }
}
