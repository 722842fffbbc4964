package rodwork.geometry.intake;

import java.util.Arrays;
import java.util.List;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Turns triangles so that neighbours face alike, and pieces of surface so that they face outward.
 *
 * <p>Triangles that are joined by edges with two triangles form a patch. Inside a patch the side
 * with the greater area decides. A closed patch faces outward when the volume inside is positive;
 * one that lies within the box of a larger closed one may be its cavity and is left alone. An open
 * patch is closed in thought by a cone over its borders from their middle: teeth and gum bulge away
 * from there, so the volume is positive when they face outward. Where it is less than {@value
 * #UNSURE_VOLUME} of area^1.5, which a whole sphere has at 0.094, an open patch is left alone.
 */
final class Winding {
  private static final double UNSURE_VOLUME = 0.002;

  private final Draft draft;
  private final MeshTopology topology;
  private final TriangleMesh mesh;
  private final byte[] balance;
  private final int[] patch;
  private final boolean[] turned;
  private int patches;

  private Winding(Draft draft) {
    this.draft = draft;
    this.topology = draft.topology();
    this.mesh = topology.mesh();
    this.balance = balance(topology);
    this.patch = new int[mesh.triangleCount()];
    this.turned = new boolean[mesh.triangleCount()];
  }

  static void mend(Draft draft, List<Remark> remarks) {
    new Winding(draft).mend(remarks);
  }

  private void mend(List<Remark> remarks) {
    int clashes = flood();
    int against = turnMinorities();
    if (against > 0) {
      remarks.add(RemarkKind.TRIANGLES_TURNED.remark(against, against));
    }
    if (clashes > 0) {
      remarks.add(RemarkKind.NOT_ORIENTABLE.remark(clashes, clashes));
    }
    turnOutward(remarks);
    for (boolean t : turned) {
      if (t) {
        draft.turn(i -> turned[i]);
        return;
      }
    }
  }

  /** By edge: +1 for each triangle that runs along it from its lower vertex, −1 for each other. */
  private static byte[] balance(MeshTopology topology) {
    TriangleMesh mesh = topology.mesh();
    byte[] balance = new byte[topology.edgeCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int edge = topology.triangleEdge(t, k);
        balance[edge] += (byte) (mesh.corner(t, k) == topology.edgeVertex(edge, 0) ? 1 : -1);
      }
    }
    return balance;
  }

  /** Numbers the patches, the first triangle of each unturned; returns the edges that clash. */
  private int flood() {
    Arrays.fill(patch, -1);
    int[] queue = new int[mesh.triangleCount()];
    int clashes = 0;
    for (int seed = 0; seed < patch.length; seed++) {
      if (patch[seed] >= 0) {
        continue;
      }
      int head = 0;
      int tail = 0;
      queue[tail++] = seed;
      patch[seed] = patches;
      while (head < tail) {
        int t = queue[head++];
        for (int k = 0; k < 3; k++) {
          int edge = topology.triangleEdge(t, k);
          if (topology.isNonManifold(edge) || topology.isBoundary(edge)) {
            continue;
          }
          int other = topology.neighbour(t, k);
          boolean shouldTurn = turned[t] ^ balance[edge] != 0;
          if (patch[other] < 0) {
            patch[other] = patches;
            turned[other] = shouldTurn;
            queue[tail++] = other;
          } else if (turned[other] != shouldTurn && t < other) {
            clashes++;
          }
        }
      }
      patches++;
    }
    return clashes;
  }

  /** Lets the greater area of each patch keep its side; returns how many triangles turn. */
  private int turnMinorities() {
    double[] excess = new double[patches];
    boolean any = false;
    for (int t = 0; t < turned.length; t++) {
      excess[patch[t]] += turned[t] ? mesh.area(t) : -mesh.area(t);
      any |= turned[t];
    }
    if (!any) {
      return 0;
    }
    int count = 0;
    for (int t = 0; t < turned.length; t++) {
      turned[t] ^= excess[patch[t]] > 0;
      count += turned[t] ? 1 : 0;
    }
    return count;
  }

  private void turnOutward(List<Remark> remarks) {
    Patches p = new Patches();
    int largest = 0;
    for (int i = 1; i < patches; i++) {
      largest = p.area[i] > p.area[largest] ? i : largest;
    }
    boolean[] turn = new boolean[patches];
    int count = 0;
    for (int i = 0; i < patches; i++) {
      boolean closed = p.border[i] == 0;
      double unsure = closed ? 0 : UNSURE_VOLUME * Math.pow(p.area[i], 1.5);
      turn[i] = p.volume[i] < -unsure && !(closed && p.maybeCavity(i));
      count += turn[i] ? 1 : 0;
    }
    if (count == 0) {
      return;
    }
    int triangles = 0;
    for (int t = 0; t < turned.length; t++) {
      if (turn[patch[t]]) {
        turned[t] = !turned[t];
        triangles++;
      }
    }
    remarks.add(RemarkKind.INSIDE_OUT.remark(count, count, triangles));
    if (turn[largest]) {
      remarks.add(RemarkKind.PERHAPS_MIRRORED.remark(1));
    }
  }

  /** Sums over each patch, in the file's unit. */
  private final class Patches {
    final double[] area = new double[patches];
    final double[] volume = new double[patches];
    final double[] border = new double[patches];
    private final double[] middle = new double[3 * patches];
    private final double[] low = new double[3 * patches];
    private final double[] high = new double[3 * patches];

    Patches() {
      Arrays.fill(low, Double.POSITIVE_INFINITY);
      Arrays.fill(high, Double.NEGATIVE_INFINITY);
      sumBorders();
      for (int i = 0; i < patches; i++) {
        for (int k = 0; k < 3; k++) {
          // a closed patch has no border; any point near it will do, and its first corner is near
          middle[3 * i + k] /= border[i] > 0 ? border[i] : 1;
        }
      }
      boolean[] placed = new boolean[patches];
      for (int t = 0; t < patch.length; t++) {
        int i = patch[t];
        if (border[i] == 0 && !placed[i]) {
          placed[i] = true;
          int v = mesh.corner(t, 0);
          middle[3 * i] = mesh.x(v);
          middle[3 * i + 1] = mesh.y(v);
          middle[3 * i + 2] = mesh.z(v);
        }
        sumTriangle(t, i);
      }
    }

    private void sumBorders() {
      for (int e = 0; e < topology.edgeCount(); e++) {
        if (topology.isBoundary(e) || topology.isNonManifold(e)) {
          int i = patch[topology.edgeTriangle(e, 0)];
          int a = topology.edgeVertex(e, 0);
          int b = topology.edgeVertex(e, 1);
          double length = mesh.vertex(a).distance(mesh.vertex(b));
          border[i] += length;
          middle[3 * i] += length * (mesh.x(a) + mesh.x(b)) / 2;
          middle[3 * i + 1] += length * (mesh.y(a) + mesh.y(b)) / 2;
          middle[3 * i + 2] += length * (mesh.z(a) + mesh.z(b)) / 2;
        }
      }
    }

    private void sumTriangle(int t, int i) {
      double[] p = new double[9];
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        double[] place = {mesh.x(v), mesh.y(v), mesh.z(v)};
        for (int c = 0; c < 3; c++) {
          low[3 * i + c] = Math.min(low[3 * i + c], place[c]);
          high[3 * i + c] = Math.max(high[3 * i + c], place[c]);
          p[3 * k + c] = place[c] - middle[3 * i + c];
        }
      }
      double six =
          p[0] * (p[4] * p[8] - p[5] * p[7])
              + p[1] * (p[5] * p[6] - p[3] * p[8])
              + p[2] * (p[3] * p[7] - p[4] * p[6]);
      area[i] += mesh.area(t);
      volume[i] += turned[t] ? -six / 6 : six / 6;
    }

    /** Whether a patch lies inside the box of another closed one. */
    boolean maybeCavity(int i) {
      for (int other = 0; other < patches; other++) {
        if (other != i && border[other] == 0) {
          boolean inside = true;
          for (int c = 0; c < 3; c++) {
            inside &= low[3 * i + c] > low[3 * other + c] && high[3 * i + c] < high[3 * other + c];
          }
          if (inside) {
            return true;
          }
        }
      }
      return false;
    }
  }
}
