package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import rodwork.anatomy.Arch;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The surface of a cast as cells of about one size, joined to their neighbours, in the arch frame.
 *
 * <p>Curvature is only comparable at one scale. On a scan with edges near 1 mm each triangle is a
 * cell; a denser one is gathered into the connected pieces that the boxes of a grid cut out of it.
 * A link between two cells tells its length, the distance of the centres and the normal curvature
 * across it, positive where the surface is concave.
 *
 * <p>Places are flat, stride 3, in the arch frame from its origin [mm]; link arrays are in rows of
 * cells: those of cell c run from {@code start[c]} to {@code start[c + 1]}.
 */
final class CellGraph {
  /** Triangles larger than this on average are cells themselves [mm²]. */
  private static final double COARSE_MM2 = 0.15;

  /** Edge of the boxes that gather smaller ones [mm]. */
  private static final double BOX_MM = 0.65;

  /** Two centres nearer than this say nothing of curvature at this scale [mm]. */
  private static final double LEAST_DISTANCE_MM = 0.2;

  private static final int SMOOTHINGS = 2;

  /** The cell of each triangle. */
  final int[] cellOf;

  final double[] area;
  final double[] place;
  final boolean[] rim;
  final int[] start;
  final int[] to;
  final double[] length;
  final double[] distance;
  final double[] concavity;

  CellGraph(Arch arch) {
    this(arch, BOX_MM, SMOOTHINGS);
  }

  private CellGraph(Arch arch, double box, int smoothings) {
    TriangleMesh mesh = arch.mesh();
    MeshTopology topology = arch.topology();
    int triangles = mesh.triangleCount();
    double[] centres = new double[3 * triangles];
    double[] twice = new double[3 * triangles];
    double all = 0;
    Vec3 x = arch.frame().x();
    Vec3 y = arch.frame().y();
    Vec3 z = arch.frame().z();
    Vec3 origin = arch.frame().origin();
    IntStream.range(0, triangles)
        .parallel()
        .forEach(
            t -> {
              Vec3 c = mesh.pointOn(t, 1.0 / 3, 1.0 / 3).minus(origin);
              Vec3 n = mesh.doubleAreaNormal(t);
              set(centres, t, c.dot(x), c.dot(y), c.dot(z));
              set(twice, t, n.dot(x), n.dot(y), n.dot(z));
            });
    for (int t = 0; t < triangles; t++) {
      all += norm(twice, t) / 2;
    }
    cellOf =
        box <= 0 || all / triangles > COARSE_MM2
            ? IntStream.range(0, triangles).toArray()
            : gathered(topology, centres, box);
    int n = Arrays.stream(cellOf).max().orElse(-1) + 1;
    area = new double[n];
    place = new double[3 * n];
    rim = new boolean[n];
    double[] normal = new double[3 * n];
    for (int t = 0; t < triangles; t++) {
      int c = cellOf[t];
      double a = norm(twice, t) / 2 + 1e-12;
      area[c] += a;
      for (int k = 0; k < 3; k++) {
        place[3 * c + k] += a * centres[3 * t + k];
        normal[3 * c + k] += twice[3 * t + k];
      }
    }
    for (int c = 0; c < n; c++) {
      for (int k = 0; k < 3; k++) {
        place[3 * c + k] /= area[c];
      }
      unit(normal, c);
    }
    Map<Long, Integer> known = new HashMap<>();
    int edges = topology.edgeCount();
    int[] from = new int[edges];
    int[] upTo = new int[edges];
    double[] border = new double[edges];
    int links = 0;
    boolean same = n == triangles;
    for (int e = 0; e < edges; e++) {
      int first = topology.edgeTriangle(e, 0);
      int second = topology.edgeTriangle(e, 1);
      if (second < 0) {
        rim[cellOf[first]] = true;
        continue;
      }
      int a = Math.min(cellOf[first], cellOf[second]);
      int b = Math.max(cellOf[first], cellOf[second]);
      if (a == b) {
        continue;
      }
      int next = links;
      int at = same ? next : known.computeIfAbsent(((long) a << 32) | b, key -> next);
      if (at == links) {
        from[links] = a;
        upTo[links++] = b;
      }
      border[at] +=
          mesh.vertex(topology.edgeVertex(e, 0)).distance(mesh.vertex(topology.edgeVertex(e, 1)));
    }
    start = new int[n + 1];
    for (int i = 0; i < links; i++) {
      start[from[i] + 1]++;
      start[upTo[i] + 1]++;
    }
    for (int c = 0; c < n; c++) {
      start[c + 1] += start[c];
    }
    to = new int[2 * links];
    length = new double[2 * links];
    int[] filled = Arrays.copyOf(start, n);
    for (int i = 0; i < links; i++) {
      int p = filled[from[i]]++;
      int q = filled[upTo[i]]++;
      to[p] = upTo[i];
      to[q] = from[i];
      length[p] = border[i];
      length[q] = border[i];
    }
    distance = new double[2 * links];
    concavity = new double[2 * links];
    for (int i = 0; i < smoothings; i++) {
      normal = smoothed(normal);
    }
    double[] smooth = normal;
    IntStream.range(0, n).parallel().forEach(c -> bend(c, smooth));
  }

  /** Every triangle a cell, whatever its size; normals smoothed over about the given distance. */
  static CellGraph fine(Arch arch, int smoothings) {
    return new CellGraph(arch, 0, smoothings);
  }

  private void bend(int c, double[] normal) {
    for (int l = start[c]; l < start[c + 1]; l++) {
      int d = to[l];
      double square = 0;
      double turn = 0;
      for (int k = 0; k < 3; k++) {
        double way = place[3 * d + k] - place[3 * c + k];
        square += way * way;
        turn += (normal[3 * c + k] - normal[3 * d + k]) * way;
      }
      distance[l] = Math.max(1e-6, Math.sqrt(square));
      concavity[l] = turn / Math.max(LEAST_DISTANCE_MM * LEAST_DISTANCE_MM, square);
    }
  }

  private double[] smoothed(double[] normal) {
    double[] out = new double[normal.length];
    IntStream.range(0, size())
        .parallel()
        .forEach(
            c -> {
              for (int k = 0; k < 3; k++) {
                out[3 * c + k] = area[c] * normal[3 * c + k];
              }
              for (int l = start[c]; l < start[c + 1]; l++) {
                double w = Math.sqrt(area[c] * area[to[l]]);
                for (int k = 0; k < 3; k++) {
                  out[3 * c + k] += w * normal[3 * to[l] + k];
                }
              }
              unit(out, c);
            });
    return out;
  }

  /** Connected triangles whose centres lie in one box of the grid. */
  private static int[] gathered(MeshTopology topology, double[] centres, double box) {
    int n = centres.length / 3;
    long[] key = new long[n];
    for (int t = 0; t < n; t++) {
      long k = 0;
      for (int i = 0; i < 3; i++) {
        k = (k << 21) | (((long) Math.floor(centres[3 * t + i] / box) + (1 << 20)) & 0x1FFFFF);
      }
      key[t] = k;
    }
    int[] cell = new int[n];
    Arrays.fill(cell, -1);
    int[] queue = new int[n];
    int cells = 0;
    for (int first = 0; first < n; first++) {
      if (cell[first] >= 0) {
        continue;
      }
      int head = 0;
      int tail = 0;
      queue[tail++] = first;
      cell[first] = cells;
      while (head < tail) {
        int t = queue[head++];
        for (int k = 0; k < 3; k++) {
          int u = topology.neighbour(t, k);
          if (u >= 0 && cell[u] < 0 && key[u] == key[first]) {
            cell[u] = cells;
            queue[tail++] = u;
          }
        }
      }
      cells++;
    }
    return cell;
  }

  int size() {
    return area.length;
  }

  double x(int cell) {
    return place[3 * cell];
  }

  double y(int cell) {
    return place[3 * cell + 1];
  }

  double z(int cell) {
    return place[3 * cell + 2];
  }

  private static void set(double[] flat, int i, double x, double y, double z) {
    flat[3 * i] = x;
    flat[3 * i + 1] = y;
    flat[3 * i + 2] = z;
  }

  private static double norm(double[] flat, int i) {
    double x = flat[3 * i];
    double y = flat[3 * i + 1];
    double z = flat[3 * i + 2];
    return Math.sqrt(x * x + y * y + z * z);
  }

  private static void unit(double[] flat, int i) {
    double norm = norm(flat, i);
    if (norm > 0) {
      for (int k = 0; k < 3; k++) {
        flat[3 * i + k] /= norm;
      }
    }
  }
}
