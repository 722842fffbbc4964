package rodwork.geometry.solid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The surface of a body as a closed mesh, by dual contouring of a sparse lattice.
 *
 * <p>From a seed inside the body the surface is found and followed from block to block, so that
 * only the neighbourhood of the surface is ever asked; a part that does not hang together with a
 * seed's is not found. Each cell that the surface crosses gets one vertex for each piece in it,
 * each crossed lattice edge a face, so that the mesh is closed, manifold and turned outwards
 * whatever the field does. Edges and corners sharper than the cell keep their shape where one cell
 * sees them alone.
 *
 * <p>Where {@link Detail} allows, cells are four times as long; the two sizes meet without a gap. A
 * part thinner than a coarse cell must not reach there: it would be lost or pinched.
 *
 * <p>Sources: Ju, Losasso, Schaefer, Warren, SIGGRAPH 2002 (vertices, two cell sizes); Nielson,
 * "Dual marching cubes", IEEE Visualization 2004 (one vertex a piece); the vertex put on a face
 * whose four edges are all crossed, which keeps the mesh manifold there, is ours. Error on a smooth
 * surface of radius of curvature R: about cell²/(8R) in the middle of a face; vertices lie closer.
 */
public final class IsoSurface {
  private static final int MOST_BLOCKS = 1 << 18;

  /** Says where fine cells are needed. */
  @FunctionalInterface
  public interface Detail {
    /** Whether the cube (centre and half side in mm) needs fine cells. */
    boolean fine(double x, double y, double z, double half);
  }

  private final Field field;
  private final double cellMm;
  private final Detail detail;
  private final Map<Long, Block> blocks = new HashMap<>();
  private final Vertices vertices;
  private final Map<FaceCorner, Integer> faceVertices = new HashMap<>();

  /**
   * Polygons: number of vertices (negative: with a vertex on a face, which comes first), then the
   * vertices, counter-clockwise from outside.
   */
  private int[] polygons = new int[1 << 16];

  private int polygonsEnd;
  private int triangleCount;

  private IsoSurface(Field field, double cellMm, Detail detail) {
    this.field = field;
    this.cellMm = cellMm;
    this.detail = detail;
    vertices = new Vertices(cellMm);
  }

  /**
   * The surface that is met going up (+z) from the seeds.
   *
   * @param field the body
   * @param cellMm side of a fine cell [mm]
   * @param detail where cells must be fine; {@code (x, y, z, half) -> true} for everywhere
   * @param seeds points inside the body, one for each part to be found
   * @throws IllegalArgumentException if a seed is not inside, or the surface has no end within 2^18
   *     blocks of 8 cells a side
   */
  public static TriangleMesh of(Field field, double cellMm, Detail detail, Vec3... seeds) {
    if (!(cellMm > 0)) {
      throw new IllegalArgumentException("a cell needs a side above 0 mm, not " + cellMm);
    }
    IsoSurface surface = new IsoSurface(field, cellMm, detail);
    surface.follow(surface.start(seeds));
    return surface.mesh();
  }

  private List<Block> start(Vec3... seeds) {
    List<Block> wave = new ArrayList<>();
    for (Vec3 seed : seeds) {
      if (!(field.at(seed.x(), seed.y(), seed.z()) < 0)) {
        throw new IllegalArgumentException("the seed " + seed + " does not lie inside the body");
      }
      int i = (int) Math.floor(seed.x() / cellMm);
      int j = (int) Math.floor(seed.y() / cellMm);
      int k = (int) Math.floor(seed.z() / cellMm);
      long most = (long) MOST_BLOCKS * Block.SIDE;
      while (field.at(i * cellMm, j * cellMm, k * cellMm) < 0) {
        k++;
        if (--most < 0) {
          throw new IllegalArgumentException("no surface above the seed " + seed);
        }
      }
      Block block =
          block(
              Math.floorDiv(i, Block.SIDE),
              Math.floorDiv(j, Block.SIDE),
              Math.floorDiv(k - 1, Block.SIDE));
      if (block != null) {
        wave.add(block);
      }
    }
    return wave;
  }

  /** A new block, or null where there is one already. */
  private @Nullable Block block(int bx, int by, int bz) {
    long key = key(bx, by, bz);
    if (blocks.containsKey(key)) {
      return null;
    }
    double half = Block.SIDE * cellMm / 2;
    boolean fine = detail.fine((2 * bx + 1) * half, (2 * by + 1) * half, (2 * bz + 1) * half, half);
    Block block = new Block(bx, by, bz, fine, field, cellMm);
    blocks.put(key, block);
    if (blocks.size() > MOST_BLOCKS) {
      throw new IllegalArgumentException(
          "the surface has no end within " + MOST_BLOCKS + " blocks of " + 2 * half + " mm");
    }
    return block;
  }

  private static long key(int bx, int by, int bz) {
    return (bx + (1L << 20)) << 42 | (by + (1L << 20)) << 21 | (bz + (1L << 20));
  }

  private void follow(List<Block> seeds) {
    List<Block> wave = seeds;
    while (!wave.isEmpty()) {
      wave.parallelStream().forEach(Block::sample);
      List<Block> next = new ArrayList<>();
      for (Block b : wave) {
        for (int n = 0; n < 27; n++) {
          if ((b.reaches >> n & 1) != 0) {
            Block reached = block(b.bx + n % 3 - 1, b.by + n / 3 % 3 - 1, b.bz + n / 9 - 1);
            if (reached != null) {
              next.add(reached);
            }
          }
        }
      }
      wave = next;
    }
  }

  private TriangleMesh mesh() {
    List<Block> all = new ArrayList<>(blocks.values());
    all.sort(
        Comparator.<Block>comparingInt(b -> b.bz)
            .thenComparingInt(b -> b.by)
            .thenComparingInt(b -> b.bx));
    for (Block b : all) {
      for (int n = 0; n < 27; n++) {
        b.around[n] = blocks.get(key(b.bx + n % 3 - 1, b.by + n / 3 % 3 - 1, b.bz + n / 9 - 1));
      }
    }
    all.parallelStream().forEach(Block::cross);
    for (Block b : all) {
      for (int e = 0; 4 * e < b.edges.length; e++) {
        addPolygon(b, e);
      }
    }
    double[] xyz = vertices.solve();
    int[] corners = triangles(xyz);
    return TriangleMesh.of(withoutUnused(xyz, corners), corners);
  }

  /** Adds the face of a crossed edge, and its crossing to the vertices of the cells round it. */
  private void addPolygon(Block b, int e) {
    int axis = b.edges[4 * e];
    int u = (axis + 1) % 3;
    int w = (axis + 2) % 3;
    int[] low = {b.edges[4 * e + 1], b.edges[4 * e + 2], b.edges[4 * e + 3]};
    boolean lowInside = b.inside(low[0], low[1], low[2]);
    int[] corner = new int[8];
    int count = 0;
    int bridged = -1;
    for (int side = 0; side < 4; side++) {
      // The cells round the edge, counter-clockwise seen from its upper end.
      int du = side == 1 || side == 2 ? 0 : -1;
      int dw = side >= 2 ? 0 : -1;
      int vertex = cellVertex(b, low, axis, u, w, du, dw);
      if (count == 0 || corner[count - 1] != vertex) {
        vertices.add(vertex, b.crossings, 6 * e);
        corner[count++] = vertex;
      }
      int bridge = b.fine() ? faceVertex(b, low, axis, u, w, side, lowInside) : -1;
      if (bridge >= 0) {
        vertices.add(bridge, b.crossings, 6 * e);
        bridged = count;
        corner[count++] = bridge;
      }
    }
    if (count > 1 && corner[count - 1] == corner[0]) {
      count--;
    }
    if (count >= 3) {
      addPolygon(corner, count, bridged, lowInside);
    }
  }

  /**
   * Keeps a polygon, from the corner {@code bridged} on where there is one (then its count is kept
   * negative: it must open there); backward where it is seen from inside.
   */
  private void addPolygon(int[] corner, int count, int bridged, boolean forward) {
    if (polygonsEnd + count + 1 > polygons.length) {
      polygons = Arrays.copyOf(polygons, 2 * polygons.length);
    }
    polygons[polygonsEnd++] = bridged < 0 ? count : -count;
    int start = Math.max(bridged, 0);
    for (int i = 0; i < count; i++) {
      polygons[polygonsEnd++] = corner[(start + (forward ? i : count - i)) % count];
    }
    triangleCount += count - 2;
  }

  /** The vertex, in the cell at (du, dw) beside an edge, of the piece that crosses the edge. */
  private int cellVertex(Block b, int[] low, int axis, int u, int w, int du, int dw) {
    int[] c = low.clone();
    c[u] += du * b.stride;
    c[w] += dw * b.stride;
    Block owner = owner(b, c);
    int i = c[0];
    int j = c[1];
    int k = c[2];
    int cell = owner.cell(i, j, k);
    if (!owner.fine()) {
      if (owner.firstVertex[cell] < 0) {
        owner.firstVertex[cell] = vertices.inCell(owner, i, j, k);
      }
      return owner.firstVertex[cell];
    }
    int pattern = owner.pattern(i, j, k);
    if (owner.firstVertex[cell] < 0) {
      owner.firstVertex[cell] = vertices.inCell(owner, i, j, k);
      for (int more = 1; more < CellCases.pieceCount(pattern); more++) {
        vertices.inCell(owner, i, j, k);
      }
    }
    return owner.firstVertex[cell]
        + CellCases.piece(pattern, CellCases.edge(axis, du == 0 ? 0 : 1, dw == 0 ? 0 : 1));
  }

  /** The block that holds a cell counted from {@code b}; the count is then from that block. */
  private static Block owner(Block b, int[] cell) {
    int at = 13;
    for (int axis = 0, step = 1; axis < 3; axis++, step *= 3) {
      int over = Math.floorDiv(cell[axis], Block.SIDE);
      at += step * over;
      cell[axis] -= over * Block.SIDE;
    }
    Block owner = b.around[at];
    if (owner == null) {
      throw new IllegalStateException("the surface was not followed into a block");
    }
    return owner;
  }

  /**
   * Where all four edges of the face between two cells round an edge are crossed, the vertex that
   * holds the two faces through it apart from the other two; else −1.
   */
  private int faceVertex(Block b, int[] low, int axis, int u, int w, int side, boolean lowInside) {
    int away = side % 2 == 0 ? w : u;
    int step = side == 1 || side == 2 ? 1 : -1;
    int[] beside = low.clone();
    beside[away] += step;
    int[] cell = beside.clone();
    if (cell[away] == Block.SIDE + 1) {
      cell[away] -= 1;
    }
    Block owner = b;
    if (beside[away] < 0 || beside[away] > Block.SIDE) {
      owner = owner(b, cell);
      if (!owner.fine()) {
        return -1;
      }
      cell[away] = step < 0 ? Block.SIDE - 1 : 1;
    }
    boolean besideLow = owner.inside(cell[0], cell[1], cell[2]);
    cell[axis]++;
    boolean besideHigh = owner.inside(cell[0], cell[1], cell[2]);
    if (besideLow == lowInside || besideHigh != lowInside) {
      return -1;
    }
    int[] inside = low.clone();
    int[] opposite = beside;
    (lowInside ? opposite : inside)[axis]++;
    FaceCorner key =
        new FaceCorner(
            b.bx * Block.SIDE + inside[0],
            b.by * Block.SIDE + inside[1],
            b.bz * Block.SIDE + inside[2],
            b.bx * Block.SIDE + opposite[0],
            b.by * Block.SIDE + opposite[1],
            b.bz * Block.SIDE + opposite[2]);
    return faceVertices.computeIfAbsent(
        key,
        f ->
            vertices.inBox(
                Math.min(f.x, f.ox),
                Math.min(f.y, f.oy),
                Math.min(f.z, f.oz),
                Math.max(f.x, f.ox),
                Math.max(f.y, f.oy),
                Math.max(f.z, f.oz)));
  }

  /** An inside corner of a face, and the corner opposite to it, as lattice points. */
  private record FaceCorner(int x, int y, int z, int ox, int oy, int oz) {}

  private int[] triangles(double[] xyz) {
    int[] corners = new int[3 * triangleCount];
    int at = 0;
    for (int p = 0; p < polygonsEnd; p += Math.abs(polygons[p]) + 1) {
      int n = Math.abs(polygons[p]);
      int first = p + 1;
      if (n == 3) {
        at = put(corners, at, polygons[first], polygons[first + 1], polygons[first + 2]);
      } else {
        // The shorter diagonal; a longer polygon is a fan from a vertex on a face, which no
        // other polygon joins to the same vertices.
        boolean turn =
            polygons[p] == 4
                && distance2(xyz, polygons[first + 1], polygons[first + 3])
                    < distance2(xyz, polygons[first], polygons[first + 2]);
        for (int k = 1; k + 1 < n; k++) {
          at =
              put(
                  corners,
                  at,
                  polygons[first + (turn ? 1 : 0)],
                  polygons[first + (turn ? (k + 1) % n : k)],
                  polygons[first + (turn ? (k + 2) % n : k + 1)]);
        }
      }
    }
    return corners;
  }

  /**
   * Drops vertices that no triangle has (all their faces had shrunk to lines), renumbers the rest.
   */
  private static double[] withoutUnused(double[] xyz, int[] corners) {
    int[] number = new int[xyz.length / 3];
    for (int c : corners) {
      number[c] = 1;
    }
    int count = 0;
    for (int v = 0; v < number.length; v++) {
      if (number[v] == 1) {
        System.arraycopy(xyz, 3 * v, xyz, 3 * count, 3);
        number[v] = count++;
      }
    }
    for (int i = 0; i < corners.length; i++) {
      corners[i] = number[corners[i]];
    }
    return Arrays.copyOf(xyz, 3 * count);
  }

  private static int put(int[] corners, int at, int a, int b, int c) {
    corners[at] = a;
    corners[at + 1] = b;
    corners[at + 2] = c;
    return at + 3;
  }

  private static double distance2(double[] xyz, int a, int b) {
    double dx = xyz[3 * a] - xyz[3 * b];
    double dy = xyz[3 * a + 1] - xyz[3 * b + 1];
    double dz = xyz[3 * a + 2] - xyz[3 * b + 2];
    return dx * dx + dy * dy + dz * dz;
  }
}
