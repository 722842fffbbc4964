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
  private static final double BOX_MM = 0.55;

  /** Two centres nearer than this say nothing of curvature at this scale [mm]. */
  private static final double LEAST_DISTANCE_MM = 0.2;

  /** The same for single triangles, in their spacing. */
  private static final double LEAST_SPACING = 0.7;

  /**
   * Rounds of evening out the normals where triangles are cells. The normal of a box is a mean of
   * many already; evened out further, a margin is as flat as the fossa of an incisor.
   */
  private static final int SMOOTHINGS = 2;

  /** The cell of each triangle, −1 for one that has none. */
  final int[] cellOf;

  final double[] area;
  final double[] place;
  final boolean[] rim;
  final int[] start;
  final int[] to;
  final double[] length;
  final double[] distance;
  final double[] concavity;

  /** The whole cast at the scale at which teeth are told apart. */
  static CellGraph of(Arch arch) {
    int triangles = arch.mesh().triangleCount();
    Places all = new Places(arch, IntStream.range(0, triangles).toArray());
    double area = 0;
    for (int t = 0; t < triangles; t++) {
      area += norm(all.twice, t) / 2;
    }
    boolean coarse = area / triangles > COARSE_MM2;
    int[] cellOf =
        coarse ? IntStream.range(0, triangles).toArray() : gathered(arch.topology(), all.centres);
    return new CellGraph(arch, all, cellOf, coarse ? SMOOTHINGS : 0, LEAST_DISTANCE_MM);
  }

  /**
   * Some triangles of a dense scan, each a cell, in the order given; the rest has none (−1).
   *
   * @param sigma how far normals are evened out [mm]
   * @param spacing between the centres of neighbouring triangles [mm]
   */
  static CellGraph ofTriangles(Arch arch, int[] triangles, double sigma, double spacing) {
    int[] cellOf = new int[arch.mesh().triangleCount()];
    Arrays.fill(cellOf, -1);
    for (int i = 0; i < triangles.length; i++) {
      cellOf[triangles[i]] = i;
    }
    int smoothings = MarginSmoothing.rounds(sigma, spacing);
    return new CellGraph(
        arch, new Places(arch, triangles), cellOf, smoothings, LEAST_SPACING * spacing);
  }

  /** Centres, and normals times twice the area, of triangles in the arch frame, stride 3. */
  private static final class Places {
    final int[] triangles;
    final double[] centres;
    final double[] twice;

    Places(Arch arch, int[] triangles) {
      this.triangles = triangles;
      centres = new double[3 * triangles.length];
      twice = new double[3 * triangles.length];
      TriangleMesh mesh = arch.mesh();
      Vec3 x = arch.frame().x();
      Vec3 y = arch.frame().y();
      Vec3 z = arch.frame().z();
      Vec3 origin = arch.frame().origin();
      IntStream.range(0, triangles.length)
          .parallel()
          .forEach(
              i -> {
                Vec3 c = mesh.pointOn(triangles[i], 1.0 / 3, 1.0 / 3).minus(origin);
                Vec3 n = mesh.doubleAreaNormal(triangles[i]);
                set(centres, i, c.dot(x), c.dot(y), c.dot(z));
                set(twice, i, n.dot(x), n.dot(y), n.dot(z));
              });
    }
  }

  private CellGraph(Arch arch, Places places, int[] cellOf, int smoothings, double leastDistance) {
    this.cellOf = cellOf;
    TriangleMesh mesh = arch.mesh();
    MeshTopology topology = arch.topology();
    int triangles = places.triangles.length;
    double[] centres = places.centres;
    double[] twice = places.twice;
    int n = Arrays.stream(cellOf).max().orElse(-1) + 1;
    area = new double[n];
    place = new double[3 * n];
    rim = new boolean[n];
    double[] normal = new double[3 * n];
    for (int i = 0; i < triangles; i++) {
      int c = cellOf[places.triangles[i]];
      double a = norm(twice, i) / 2 + 1e-12;
      area[c] += a;
      for (int k = 0; k < 3; k++) {
        place[3 * c + k] += a * centres[3 * i + k];
        normal[3 * c + k] += twice[3 * i + k];
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
        if (cellOf[first] >= 0) {
          rim[cellOf[first]] = true;
        }
        continue;
      }
      int a = Math.min(cellOf[first], cellOf[second]);
      int b = Math.max(cellOf[first], cellOf[second]);
      if (a == b || a < 0) {
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
    IntStream.range(0, n).parallel().forEach(c -> bend(c, smooth, leastDistance));
  }

  private void bend(int c, double[] normal, double leastDistance) {
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
      concavity[l] = turn / Math.max(leastDistance * leastDistance, square);
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
  private static int[] gathered(MeshTopology topology, double[] centres) {
    int n = centres.length / 3;
    long[] key = new long[n];
    for (int t = 0; t < n; t++) {
      long k = 0;
      for (int i = 0; i < 3; i++) {
        k = (k << 21) | (((long) Math.floor(centres[3 * t + i] / BOX_MM) + (1 << 20)) & 0x1FFFFF);
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
