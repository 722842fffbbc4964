package rodwork.geometry.io;

/**
 * Cuts a polygon in space into triangles with the polygon's winding, using its own corners alone;
 * mutable scratch, one a reading.
 *
 * <p>A strictly convex polygon becomes a fan about its first corner; any other is cut by taking off
 * ears in the plane of its Newell normal (G. H. Meisters, Polygons have ears, Am. Math. Monthly 82,
 * 1975; cost n² for n corners). Corners on a straight side are kept, and no triangle without area
 * is made as long as another choice is left. Where a polygon crosses itself no ear may be left;
 * then the rest becomes a fan and {@link #crossed} tells so.
 */
final class Polygon {
  /** Most corners of one polygon: beyond, the n² cost would look like a hang. */
  static final int MAX_CORNERS = 2048;

  private final double[] u = new double[MAX_CORNERS];
  private final double[] v = new double[MAX_CORNERS];
  private final int[] before = new int[MAX_CORNERS];
  private final int[] after = new int[MAX_CORNERS];
  private final int[] hollow = new int[MAX_CORNERS];
  private int hollows;
  private boolean crossed;

  /** Whether the polygon last cut crosses itself, so that its triangles overlap. */
  boolean crossed() {
    return crossed;
  }

  /**
   * Cuts one polygon.
   *
   * @param ids the vertex numbers of its corners stand here
   * @param start where the first of them stands
   * @param n how many corners it has [4 to {@link #MAX_CORNERS}]
   * @param xyz coordinates, stride 3
   * @param out takes the corners of n − 2 triangles
   */
  void cut(Ints ids, int start, int n, Doubles xyz, Ints out) {
    crossed = false;
    project(ids, start, n, xyz);
    if (isStrictlyConvex(n)) {
      for (int i = 1; i < n - 1; i++) {
        out.add(ids.get(start), ids.get(start + i), ids.get(start + i + 1));
      }
      return;
    }
    for (int i = 0; i < n; i++) {
      before[i] = i == 0 ? n - 1 : i - 1;
      after[i] = i == n - 1 ? 0 : i + 1;
    }
    hollows = 0;
    for (int i = 0; i < n; i++) {
      if (!sticksOut(i)) {
        hollow[hollows++] = i;
      }
    }
    int at = 0;
    for (int left = n; left > 3; left--) {
      int ear = crossed ? at : ear(at, left);
      int a = before[ear];
      int b = after[ear];
      out.add(ids.get(start + a), ids.get(start + ear), ids.get(start + b));
      after[a] = b;
      before[b] = a;
      review(ear, false);
      review(a, !sticksOut(a));
      review(b, !sticksOut(b));
      at = a; // where one ear came off the next is near
    }
    out.add(ids.get(start + before[at]), ids.get(start + at), ids.get(start + after[at]));
  }

  /** Lists a corner among the hollow ones, or no longer. */
  private void review(int corner, boolean isHollow) {
    int place = 0;
    while (place < hollows && hollow[place] != corner) {
      place++;
    }
    if (isHollow && place == hollows) {
      hollow[hollows++] = corner;
    } else if (!isHollow && place < hollows) {
      hollow[place] = hollow[--hollows];
    }
  }

  private boolean sticksOut(int c) {
    return turn(before[c], c, after[c]) > 0;
  }

  /**
   * Drops the coordinate along which the Newell normal is largest, keeping the winding positive.
   */
  private void project(Ints ids, int start, int n, Doubles xyz) {
    double nx = 0;
    double ny = 0;
    double nz = 0;
    int o = 3 * ids.get(start);
    int a = 3 * ids.get(start + n - 1);
    for (int i = 0; i < n; i++) {
      int b = 3 * ids.get(start + i);
      double ax = xyz.get(a) - xyz.get(o);
      double ay = xyz.get(a + 1) - xyz.get(o + 1);
      double az = xyz.get(a + 2) - xyz.get(o + 2);
      double bx = xyz.get(b) - xyz.get(o);
      double by = xyz.get(b + 1) - xyz.get(o + 1);
      double bz = xyz.get(b + 2) - xyz.get(o + 2);
      nx += ay * bz - az * by;
      ny += az * bx - ax * bz;
      nz += ax * by - ay * bx;
      a = b;
    }
    double sx = Math.abs(nx);
    double sy = Math.abs(ny);
    double sz = Math.abs(nz);
    int drop = sx >= sy && sx >= sz ? 0 : sy >= sz ? 1 : 2;
    boolean flip = (drop == 0 ? nx : drop == 1 ? ny : nz) < 0;
    int first = (drop + 1) % 3;
    int second = (drop + 2) % 3;
    for (int i = 0; i < n; i++) {
      int at = 3 * ids.get(start + i);
      double p = xyz.get(at + first) - xyz.get(o + first);
      double q = xyz.get(at + second) - xyz.get(o + second);
      u[i] = flip ? q : p;
      v[i] = flip ? p : q;
    }
  }

  private boolean isStrictlyConvex(int n) {
    for (int i = 0; i < n; i++) {
      if (!(turn(i, (i + 1) % n, (i + 2) % n) > 0)) {
        return false;
      }
      // A star turns left at every corner too, but not as seen from its first.
      if (i > 0 && i < n - 1 && !(turn(0, i, i + 1) > 0)) {
        return false;
      }
    }
    return true;
  }

  /** The next corner from {@code from} on that can be taken off. */
  private int ear(int from, int left) {
    int flat = -1;
    int c = from;
    for (int tried = 0; tried < left; tried++, c = after[c]) {
      double turn = turn(before[c], c, after[c]);
      if (turn > 0 && isFree(c)) {
        return c;
      }
      if (turn == 0 && flat < 0) {
        flat = c;
      }
    }
    if (flat >= 0) {
      return flat;
    }
    crossed = true;
    return from;
  }

  /**
   * Whether no other corner lies in or on the triangle at a corner; only hollow ones need asking,
   * since one that sticks out cannot come in first.
   */
  private boolean isFree(int c) {
    int a = before[c];
    int b = after[c];
    for (int k = 0; k < hollows; k++) {
      int p = hollow[k];
      if (turn(a, c, p) >= 0
          && turn(c, b, p) >= 0
          && turn(b, a, p) >= 0
          && !same(p, a)
          && !same(p, b)
          && !same(p, c)) {
        return false;
      }
    }
    return true;
  }

  private boolean same(int p, int q) {
    return u[p] == u[q] && v[p] == v[q];
  }

  /** Twice the signed area of three corners; positive for a left turn. */
  private double turn(int a, int b, int c) {
    return (u[b] - u[a]) * (v[c] - v[a]) - (v[b] - v[a]) * (u[c] - u[a]);
  }
}
