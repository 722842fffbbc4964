package rodwork.geometry.solid;

/**
 * Which of a cell's twelve edges are crossed by the same piece of the surface.
 *
 * <p>Corner {@code i} of a cell lies at ({@code i & 1}, {@code i >> 1 & 1}, {@code i >> 2 & 1}).
 * Edge {@code 4·axis + 2·w + u} runs along its axis; u and w are its place on the next two axes in
 * cyclic order. Where all four edges of a face are crossed, the inside corners are taken as
 * separate; both cells at the face see it alike, so that the pieces fit together.
 */
final class CellCases {
  /** For each of the 256 patterns of inside corners, the piece that each edge belongs to, or −1. */
  private static final byte[][] PIECE = new byte[256][];

  private static final int[] PIECES = new int[256];

  static {
    for (int pattern = 0; pattern < 256; pattern++) {
      PIECE[pattern] = pieces(pattern);
      for (byte piece : PIECE[pattern]) {
        PIECES[pattern] = Math.max(PIECES[pattern], piece + 1);
      }
    }
  }

  private CellCases() {}

  /** How many pieces of surface a cell with these inside corners has. */
  static int pieceCount(int pattern) {
    return PIECES[pattern];
  }

  /** The piece that crosses an edge; −1 where the edge is not crossed. */
  static int piece(int pattern, int edge) {
    return PIECE[pattern][edge];
  }

  /** The edge along {@code axis} at place (u, w) on the next two axes. */
  static int edge(int axis, int u, int w) {
    return 4 * axis + 2 * w + u;
  }

  private static byte[] pieces(int pattern) {
    int[] group = new int[12];
    for (int e = 0; e < 12; e++) {
      group[e] = e;
    }
    for (int axis = 0; axis < 3; axis++) {
      for (int side = 0; side < 2; side++) {
        joinOnFace(pattern, axis, side, group);
      }
    }
    byte[] result = new byte[12];
    int[] number = new int[12];
    java.util.Arrays.fill(number, -1);
    int count = 0;
    for (int e = 0; e < 12; e++) {
      if (!crossed(pattern, e)) {
        result[e] = -1;
        continue;
      }
      int root = root(group, e);
      if (number[root] < 0) {
        number[root] = count++;
      }
      result[e] = (byte) number[root];
    }
    return result;
  }

  /** Joins the crossed edges of the face that is perpendicular to an axis. */
  private static void joinOnFace(int pattern, int axis, int side, int[] group) {
    int u = (axis + 1) % 3;
    int w = (axis + 2) % 3;
    // The edges of the face, round it: along u at w = 0 and 1, along w at u = 0 and 1.
    int u0 = edge(u, 0, side);
    int u1 = edge(u, 1, side);
    int w0 = edge(w, side, 0);
    int w1 = edge(w, side, 1);
    int[] round = {u0, w1, u1, w0};
    int crossedCount = 0;
    for (int e : round) {
      crossedCount += crossed(pattern, e) ? 1 : 0;
    }
    if (crossedCount == 2) {
      int first = -1;
      for (int e : round) {
        if (crossed(pattern, e)) {
          if (first < 0) {
            first = e;
          } else {
            join(group, first, e);
          }
        }
      }
    } else if (crossedCount == 4) {
      int origin = side << axis;
      boolean originInside = (pattern >> origin & 1) != 0;
      if (originInside) {
        join(group, u0, w0);
        join(group, u1, w1);
      } else {
        join(group, u0, w1);
        join(group, u1, w0);
      }
    }
  }

  private static boolean crossed(int pattern, int edge) {
    int axis = edge / 4;
    int u = edge & 1;
    int w = edge >> 1 & 1;
    int low = u << (axis + 1) % 3 | w << (axis + 2) % 3;
    int high = low | 1 << axis;
    return (pattern >> low & 1) != (pattern >> high & 1);
  }

  private static int root(int[] group, int e) {
    int r = e;
    while (group[r] != r) {
      r = group[r];
    }
    return r;
  }

  private static void join(int[] group, int a, int b) {
    group[root(group, b)] = root(group, a);
  }
}
