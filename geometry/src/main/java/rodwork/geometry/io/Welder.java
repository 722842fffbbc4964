package rodwork.geometry.io;

/**
 * Numbers corners by their coordinates: equal coordinates, equal number; mutable while it reads.
 *
 * <p>Equal means the same bits, with −0 taken for 0, so nothing is moved and the order of the
 * corners decides nothing but the numbering: vertices are numbered as they first appear. NaN welds
 * with the same NaN.
 *
 * <p>An open-addressing table of vertex numbers beside the coordinates themselves; a table of
 * objects costs ten times as much.
 */
final class Welder {
  private static final int FIRST_SLOTS = 1 << 12;

  private final Budget budget;
  private final Doubles xyz;
  private int[] slots;
  private int mask;
  private int vertices;
  private int limit;

  /**
   * @param xyz where new vertices go, empty now
   * @param expected a guess at the number of vertices, from the real size of the file
   */
  Welder(Budget budget, Doubles xyz, int expected) {
    this.budget = budget;
    this.xyz = xyz;
    int size = FIRST_SLOTS;
    while (size < 2L * expected && size < 1 << 28) {
      size <<= 1;
    }
    budget.take(4L * size);
    slots = new int[size];
    mask = size - 1;
    limit = size / 2;
  }

  /** The number of the vertex at this place, new or known. */
  int vertex(double x, double y, double z) {
    double x0 = x + 0.0; // −0 + 0 is +0
    double y0 = y + 0.0;
    double z0 = z + 0.0;
    long bx = Double.doubleToRawLongBits(x0);
    long by = Double.doubleToRawLongBits(y0);
    long bz = Double.doubleToRawLongBits(z0);
    double[] known = xyz.array();
    int slot = hash(bx, by, bz) & mask;
    for (int id = slots[slot]; id != 0; id = slots[slot]) {
      int at = 3 * (id - 1);
      if (Double.doubleToRawLongBits(known[at]) == bx
          && Double.doubleToRawLongBits(known[at + 1]) == by
          && Double.doubleToRawLongBits(known[at + 2]) == bz) {
        return id - 1;
      }
      slot = (slot + 1) & mask;
    }
    xyz.add(x0, y0, z0);
    slots[slot] = ++vertices;
    if (vertices > limit) {
      rehash();
    }
    return vertices - 1;
  }

  private static int hash(long x, long y, long z) {
    long h = x * 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 29) ^ y) * 0xBF58476D1CE4E5B9L;
    h = (h ^ (h >>> 32) ^ z) * 0x94D049BB133111EBL;
    return (int) (h >>> 33);
  }

  private void rehash() {
    if (slots.length == 1 << 30) {
      limit = Integer.MAX_VALUE; // fuller, slower, still right: vertices number below 2^31 / 3
      return;
    }
    int size = 2 * slots.length;
    budget.take(4L * size);
    int[] next = new int[size];
    mask = size - 1;
    double[] known = xyz.array();
    for (int id = 1; id <= vertices; id++) {
      int at = 3 * (id - 1);
      int slot =
          hash(
                  Double.doubleToRawLongBits(known[at]),
                  Double.doubleToRawLongBits(known[at + 1]),
                  Double.doubleToRawLongBits(known[at + 2]))
              & mask;
      while (next[slot] != 0) {
        slot = (slot + 1) & mask;
      }
      next[slot] = id;
    }
    budget.give(4L * slots.length);
    slots = next;
    limit = size / 2;
  }
}
