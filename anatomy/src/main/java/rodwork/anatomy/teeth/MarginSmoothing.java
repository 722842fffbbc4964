package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import rodwork.geometry.mesh.MeshTopology;

/**
 * Evens the steps that cells leave in the edges of teeth: each label is spread by diffusion over
 * the triangles near an edge and the strongest wins (Merriman, Bence and Osher, "Diffusion
 * generated motion by mean curvature", UCLA CAM report 92-18, 1992).
 */
final class MarginSmoothing {
  /** Share of itself that a triangle keeps in a round is as large as that of each neighbour. */
  private static final double VARIANCE_A_ROUND = 0.75;

  private static final int MOST_ROUNDS = 60;

  private MarginSmoothing() {}

  /**
   * Smoothed labels.
   *
   * @param fixed triangles that keep theirs
   * @param sigma how far labels are spread [mm]
   * @param spacing between centres of neighbouring triangles [mm]
   */
  static int[] of(
      MeshTopology topology, int[] label, boolean[] fixed, double sigma, double spacing) {
    int rounds = rounds(sigma, spacing);
    int hops = (int) Math.ceil(2.5 * sigma / spacing);
    int[] band = band(topology, label, hops, new int[label.length]);
    int[] local = new int[label.length];
    Arrays.fill(local, -1);
    SortedSet<Integer> labels = new TreeSet<>();
    for (int i = 0; i < band.length; i++) {
      local[band[i]] = i;
      labels.add(label[band[i]]);
    }
    int[] beside = new int[3 * band.length];
    for (int i = 0; i < band.length; i++) {
      for (int k = 0; k < 3; k++) {
        int u = topology.neighbour(band[i], k);
        beside[3 * i + k] = u >= 0 ? local[u] : -1;
      }
    }
    int[] own = Arrays.stream(band).map(t -> label[t]).toArray();
    double[] best = new double[band.length];
    int[] out = label.clone();
    int[] order = labels.stream().mapToInt(l -> l).toArray();
    double[][] share = new double[order.length][];
    IntStream.range(0, order.length)
        .parallel()
        .forEach(
            i -> share[i] = spread(own, beside, order[i], hops, Math.min(rounds, MOST_ROUNDS)));
    for (int i = 0; i < order.length; i++) {
      for (int b = 0; b < band.length; b++) {
        if (share[i][b] > best[b] && !fixed[band[b]]) {
          best[b] = share[i][b];
          out[band[b]] = order[i];
        }
      }
    }
    return out;
  }

  /** Rounds of evening out over a triangle and its neighbours that spread as far as sigma [mm]. */
  static int rounds(double sigma, double spacing) {
    return (int) Math.ceil(sigma * sigma / (VARIANCE_A_ROUND * spacing * spacing));
  }

  /** One label over the band; outside it a label is as sure as at its border. */
  private static double[] spread(int[] own, int[] beside, int label, int hops, int rounds) {
    int n = own.length;
    double[] now = new double[n];
    int[] near = new int[n];
    boolean[] seen = new boolean[n];
    int count = 0;
    for (int b = 0; b < n; b++) {
      if (own[b] == label) {
        now[b] = 1;
        seen[b] = true;
        near[count++] = b;
      }
    }
    for (int hop = 0, from = 0; hop < hops; hop++) {
      int to = count;
      for (; from < to; from++) {
        for (int k = 0; k < 3; k++) {
          int u = beside[3 * near[from] + k];
          if (u >= 0 && !seen[u]) {
            seen[u] = true;
            near[count++] = u;
          }
        }
      }
    }
    double[] next = new double[n];
    for (int round = 0; round < rounds; round++) {
      for (int i = 0; i < count; i++) {
        int b = near[i];
        double sum = now[b];
        int parts = 1;
        for (int k = 0; k < 3; k++) {
          int u = beside[3 * b + k];
          if (u >= 0) {
            sum += now[u];
            parts++;
          }
        }
        next[b] = sum / parts;
      }
      double[] swap = now;
      now = next;
      next = swap;
    }
    return now;
  }

  /**
   * Triangles within some hops of an edge between labels.
   *
   * @param hop is filled with their hops, −1 elsewhere
   */
  static int[] band(MeshTopology topology, int[] label, int hops, int[] hop) {
    int[] queue = new int[label.length];
    Arrays.fill(hop, -1);
    int tail = 0;
    for (int t = 0; t < label.length; t++) {
      for (int k = 0; k < 3; k++) {
        int u = topology.neighbour(t, k);
        if (u >= 0 && label[u] != label[t] && hop[t] < 0) {
          hop[t] = 0;
          queue[tail++] = t;
        }
      }
    }
    for (int head = 0; head < tail; head++) {
      int t = queue[head];
      for (int k = 0; k < 3 && hop[t] < hops; k++) {
        int u = topology.neighbour(t, k);
        if (u >= 0 && hop[u] < 0) {
          hop[u] = hop[t] + 1;
          queue[tail++] = u;
        }
      }
    }
    return Arrays.copyOf(queue, tail);
  }
}
