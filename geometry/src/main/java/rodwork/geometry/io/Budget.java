package rodwork.geometry.io;

/**
 * The memory that one reading may use, so that a huge file ends in a refusal and not in a crash.
 *
 * <p>Counts the large arrays only; what is small beside them is covered by leaving half of the heap
 * out of the budget. A vertex costs 24 bytes and a triangle 12, the weld of an STL up to 16 bytes a
 * vertex more, and a growing array briefly lives twice: a cast of 1,000,000 triangles needs about
 * 50 MB.
 */
final class Budget {
  private final String file;
  private final long limitBytes;
  private long usedBytes;

  Budget(String file, long limitBytes) {
    this.file = file;
    this.limitBytes = limitBytes;
  }

  /** Half of what the virtual machine may use in all. */
  static long heapLimitBytes() {
    return Runtime.getRuntime().maxMemory() / 2;
  }

  static Budget ofHeap(String file) {
    return new Budget(file, heapLimitBytes());
  }

  /** Takes bytes before an array of that size is made. */
  void take(long bytes) {
    if (bytes > limitBytes - usedBytes) {
      throw IoProblem.TOO_LARGE.refusal(file, limitBytes >> 20);
    }
    usedBytes += bytes;
  }

  /** Gives bytes back when their array is let go. */
  void give(long bytes) {
    usedBytes -= bytes;
  }

  /**
   * The next size of a growing array.
   *
   * @param size present number of elements
   * @param needed least number of elements wanted
   * @return half as much again, at least {@code needed}
   */
  int grown(int size, long needed) {
    if (needed > Integer.MAX_VALUE - 16) {
      throw IoProblem.TOO_LARGE.refusal(file, limitBytes >> 20);
    }
    return (int) Math.min(Integer.MAX_VALUE - 16, Math.max(needed, size + (size >> 1) + 64L));
  }
}
