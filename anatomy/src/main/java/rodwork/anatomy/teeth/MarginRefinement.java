package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.stream.IntStream;
import rodwork.anatomy.Arch;
import rodwork.geometry.Watch;

/**
 * Draws the edges of teeth anew on the triangles of a dense scan: cells tell which tooth is where,
 * but a margin is narrower than a cell. In a band about each edge the walk is walked once more from
 * triangle to triangle, from what lies beyond the band on either side (as in the narrow bands of
 * Lombaert, Sun, Grady and Xu, "A multilevel banded graph cuts method for fast image segmentation",
 * ICCV 2005; with {@link RandomWalker} in place of the cut), so that the edge settles in the hollow
 * between tooth and gum.
 */
final class MarginRefinement {
  /**
   * Half width of the band [mm]. Edges of cells lie up to 1 mm off on the demo casts; 0.8 mm does
   * no worse there.
   */
  private static final double BAND_MM = 1.0;

  /** How far normals are evened out: as narrow as noise of some µm allows [mm]. */
  private static final double NORMALS_MM = 0.2;

  /**
   * How steeply weights fall with the root of the concavity [mm^½]: less than on cells, where
   * hollows are flatter. 7 did as well in the mean, and left single ways along a contact.
   */
  private static final double STEEPNESS = 5;

  /** Concavity above this tells no more [1/mm]. */
  private static final double SHARPEST = 4;

  /** A step from triangle to triangle goes so much of their spacing forward. */
  private static final double FORWARD = 0.8;

  private MarginRefinement() {}

  /**
   * Labels with their edges drawn anew.
   *
   * @param fixed triangles that keep theirs
   * @param spacing between centres of neighbouring triangles [mm]
   */
  static int[] of(Arch arch, int[] label, boolean[] fixed, double spacing, Watch watch) {
    int hops = (int) Math.ceil(BAND_MM / (FORWARD * spacing));
    int[] hop = new int[label.length];
    int[] band = MarginSmoothing.band(arch.topology(), label, hops, hop);
    int n = band.length;
    int[] before = new int[n];
    int[] seed = new int[n];
    for (int i = 0; i < n; i++) {
      before[i] = label[band[i]];
      seed[i] = hop[band[i]] == hops || fixed[band[i]] ? before[i] : -1;
    }
    CellGraph graph = CellGraph.ofTriangles(arch, band, NORMALS_MM, spacing);
    RandomWalker walker = new RandomWalker(graph, seed, new double[n], STEEPNESS, SHARPEST);
    int[] teeth =
        Arrays.stream(before).filter(l -> l != ToothLabels.GUM).distinct().sorted().toArray();
    int[][] cells = new int[teeth.length][];
    double[][] chance = new double[teeth.length][];
    IntStream.range(0, teeth.length)
        .parallel()
        .forEach(
            i -> {
              cells[i] = within(graph, before, teeth[i], hops);
              chance[i] = walker.chance(teeth[i], cells[i], new double[cells[i].length], watch);
            });
    double[] gum = new double[n];
    double[] best = new double[n];
    int[] likeliest = new int[n];
    Arrays.fill(gum, 1);
    for (int i = 0; i < teeth.length; i++) {
      for (int k = 0; k < cells[i].length; k++) {
        int c = cells[i][k];
        gum[c] -= chance[i][k];
        if (chance[i][k] > best[c]) {
          best[c] = chance[i][k];
          likeliest[c] = teeth[i];
        }
      }
    }
    int[] out = label.clone();
    for (int c = 0; c < n; c++) {
      if (seed[c] < 0) {
        out[band[c]] = gum[c] >= best[c] ? ToothLabels.GUM : likeliest[c];
      }
    }
    return out;
  }

  /** The cells of a label and those within some steps of them. */
  private static int[] within(CellGraph graph, int[] label, int wanted, int steps) {
    int[] queue = new int[graph.size()];
    boolean[] seen = new boolean[graph.size()];
    int count = 0;
    for (int c = 0; c < queue.length; c++) {
      if (label[c] == wanted) {
        queue[count++] = c;
        seen[c] = true;
      }
    }
    for (int step = 0, from = 0; step < steps; step++) {
      int to = count;
      for (; from < to; from++) {
        for (int l = graph.start[queue[from]]; l < graph.start[queue[from] + 1]; l++) {
          int next = graph.to[l];
          if (!seen[next]) {
            seen[next] = true;
            queue[count++] = next;
          }
        }
      }
    }
    return Arrays.copyOf(queue, count);
  }
}
