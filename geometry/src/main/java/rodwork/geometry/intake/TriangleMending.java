package rodwork.geometry.intake;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import rodwork.geometry.mesh.MeshTopology;

/** Takes out triangles that are lines, points, or said twice. */
final class TriangleMending {
  /**
   * A triangle whose height is less than this share of its longest side has no direction: a
   * thousandth of what 32-bit coordinates can tell apart.
   */
  private static final double FLAT_SHARE = 1e-10;

  /** Chains of flat triangles are divided one link a pass. */
  private static final int MOST_PASSES = 20;

  private TriangleMending() {}

  /** Removes triangles that name one vertex twice; returns how many. */
  static int dropCollapsed(Draft draft, List<Remark> remarks) {
    int dropped =
        draft.keepOnly(
            t ->
                draft.corner(t, 0) != draft.corner(t, 1)
                    && draft.corner(t, 1) != draft.corner(t, 2)
                    && draft.corner(t, 2) != draft.corner(t, 0));
    if (dropped > 0) {
      remarks.add(RemarkKind.TRIANGLES_COLLAPSED.remark(dropped, dropped));
    }
    return dropped;
  }

  /** Removes triangles with the same three vertices as an earlier one, whichever way they face. */
  static void dropRepeated(Draft draft, List<Remark> remarks) {
    MeshTopology topology = draft.topology();
    Set<Corners> seen = new HashSet<>();
    int dropped =
        draft.keepOnly(t -> !mayBeRepeated(topology, t) || seen.add(Corners.of(draft, t)));
    if (dropped > 0) {
      remarks.add(RemarkKind.TRIANGLES_REPEATED.remark(dropped, dropped));
    }
  }

  /**
   * Two equal triangles share all edges: each is crowded, or leads to the same neighbour thrice.
   */
  private static boolean mayBeRepeated(MeshTopology topology, int t) {
    for (int k = 0; k < 3; k++) {
      if (topology.isNonManifold(topology.triangleEdge(t, k))) {
        return true;
      }
    }
    int other = topology.neighbour(t, 0);
    return other >= 0 && other == topology.neighbour(t, 1) && other == topology.neighbour(t, 2);
  }

  /**
   * Gives the area-less triangle a, b, c, with b between a and c, and its neighbour c, a, d new
   * shapes a, b, d and b, c, d, which closes no gap and opens none; at a border it is dropped.
   */
  static int mendFlat(Draft draft, List<Remark> remarks) {
    int mended = 0;
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      int changed = mendFlatOnce(draft);
      mended += changed;
      if (changed == 0) {
        break;
      }
    }
    // What no pass could mend lies among triangles that are flat themselves.
    mended += draft.keepOnly(t -> flatSide(draft, t) < 0);
    if (mended > 0) {
      remarks.add(RemarkKind.TRIANGLES_FLAT.remark(mended, mended));
    }
    return mended;
  }

  private static int mendFlatOnce(Draft draft) {
    int triangles = draft.triangleCount();
    int[] flat = IntStream.range(0, triangles).filter(t -> flatSide(draft, t) >= 0).toArray();
    if (flat.length == 0) {
      return 0;
    }
    MeshTopology topology = draft.topology();
    int[] next = draft.copyOfCorners();
    boolean[] touched = new boolean[triangles];
    boolean[] drop = new boolean[triangles];
    int changed = 0;
    for (int t : flat) {
      int k = flatSide(draft, t);
      int edge = topology.triangleEdge(t, k);
      int n = topology.neighbour(t, k);
      if (n < 0) {
        drop[t] = true;
        touched[t] = true;
        changed++;
        continue;
      }
      // Both must be as they were, and the neighbour must have area to share.
      if (touched[t] || touched[n] || flatSide(draft, n) >= 0) {
        continue;
      }
      int side = sideOf(topology, n, edge);
      int a = draft.corner(n, side);
      int c = draft.corner(n, (side + 1) % 3);
      int d = draft.corner(n, (side + 2) % 3);
      int b = draft.corner(t, (k + 2) % 3);
      put(next, t, a, b, d);
      put(next, n, b, c, d);
      touched[t] = true;
      touched[n] = true;
      changed++;
    }
    if (changed > 0) {
      draft.setCorners(next);
      draft.keepOnly(t -> !drop[t]);
    }
    return changed;
  }

  private static void put(int[] corners, int t, int a, int b, int c) {
    corners[3 * t] = a;
    corners[3 * t + 1] = b;
    corners[3 * t + 2] = c;
  }

  private static int sideOf(MeshTopology topology, int triangle, int edge) {
    for (int k = 0; k < 3; k++) {
      if (topology.triangleEdge(triangle, k) == edge) {
        return k;
      }
    }
    throw new AssertionError("triangle " + triangle + " has no edge " + edge);
  }

  /** The longest side of a triangle without area; −1 where it has some. */
  private static int flatSide(Draft draft, int t) {
    double[] p = draft.xyz;
    int a = 3 * draft.corner(t, 0);
    int b = 3 * draft.corner(t, 1);
    int c = 3 * draft.corner(t, 2);
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double ab = ux * ux + uy * uy + uz * uz;
    double ca = vx * vx + vy * vy + vz * vz;
    double bc = ab + ca - 2 * (ux * vx + uy * vy + uz * vz);
    double longest = Math.max(ab, Math.max(bc, ca));
    if (nx * nx + ny * ny + nz * nz > FLAT_SHARE * FLAT_SHARE * longest * longest) {
      return -1;
    }
    return longest == ab ? 0 : longest == bc ? 1 : 2;
  }

  private record Corners(int low, int middle, int high) {
    static Corners of(Draft draft, int t) {
      int a = draft.corner(t, 0);
      int b = draft.corner(t, 1);
      int c = draft.corner(t, 2);
      int low = Math.min(a, Math.min(b, c));
      int high = Math.max(a, Math.max(b, c));
      return new Corners(low, a + b + c - low - high, high);
    }
  }
}
