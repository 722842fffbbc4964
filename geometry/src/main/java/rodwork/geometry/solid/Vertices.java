package rodwork.geometry.solid;

import java.util.Arrays;
import java.util.stream.IntStream;

/** The vertices of a surface under way: the planes that each must meet, the box it must keep to. */
final class Vertices {
  private final double cellMm;
  private int count;
  private double[] sums = new double[1 << 16];

  /** Lowest and highest corner of each vertex's box, in fine cells; stride 6. */
  private int[] boxes = new int[1 << 15];

  Vertices(double cellMm) {
    this.cellMm = cellMm;
  }

  /** A new vertex in a cell of a block; its number. */
  int inCell(Block block, int i, int j, int k) {
    int s = block.stride;
    int x = block.bx * Block.SIDE + i / s * s;
    int y = block.by * Block.SIDE + j / s * s;
    int z = block.bz * Block.SIDE + k / s * s;
    return inBox(x, y, z, x + s, y + s, z + s);
  }

  /** A new vertex in a box of the lattice; its number. */
  int inBox(int x0, int y0, int z0, int x1, int y1, int z1) {
    if (6 * count + 6 > boxes.length) {
      boxes = Arrays.copyOf(boxes, 2 * boxes.length);
    }
    if (Qef.STRIDE * (count + 1) > sums.length) {
      sums = Arrays.copyOf(sums, 2 * sums.length);
    }
    int at = 6 * count;
    boxes[at] = x0;
    boxes[at + 1] = y0;
    boxes[at + 2] = z0;
    boxes[at + 3] = x1;
    boxes[at + 4] = y1;
    boxes[at + 5] = z1;
    return count++;
  }

  /** Adds a crossing (place and normal at {@code c}) to what a vertex must meet. */
  void add(int vertex, double[] crossings, int c) {
    Qef.add(sums, Qef.STRIDE * vertex, crossings, c);
  }

  /** The coordinates of all vertices, stride 3 [mm]. */
  double[] solve() {
    double[] xyz = new double[3 * count];
    IntStream.range(0, (count + 4095) / 4096)
        .parallel()
        .forEach(
            part -> {
              for (int v = 4096 * part; v < Math.min(count, 4096 * part + 4096); v++) {
                Qef.solve(sums, Qef.STRIDE * v, xyz, 3 * v);
                for (int axis = 0; axis < 3; axis++) {
                  xyz[3 * v + axis] =
                      Math.clamp(
                          xyz[3 * v + axis],
                          boxes[6 * v + axis] * cellMm,
                          boxes[6 * v + 3 + axis] * cellMm);
                }
              }
            });
    return xyz;
  }
}
