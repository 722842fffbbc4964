package rodwork.survey.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A surface in small pieces, each of which stands for the triangles whose middles lie in a cube.
 * The cubes belong to the arch, so that the pieces turn with the cast.
 */
final class SurfaceCells {
  private SurfaceCells() {}

  /**
   * One piece.
   *
   * @param triangle the one whose middle lies nearest to the piece's
   * @param point middle of that triangle [mm]
   * @param areaMm2 of all triangles of the piece
   * @param normal their mean [unit vector]
   */
  record Cell(int triangle, Vec3 point, double areaMm2, Vec3 normal) {}

  /** The triangles asked for, in cubes of a side. */
  static List<Cell> of(Arch arch, IntPredicate wanted, double sideMm) {
    int all = arch.mesh().triangleCount();
    return of(arch, IntStream.range(0, all).filter(wanted).toArray(), sideMm);
  }

  static List<Cell> of(Arch arch, int[] triangles, double sideMm) {
    TriangleMesh mesh = arch.mesh();
    ArchFrame frame = arch.frame();
    Map<List<Long>, List<Integer>> cubes = new HashMap<>();
    List<List<Integer>> inOrder = new ArrayList<>();
    for (int t : triangles) {
      Vec3 q = frame.toArch(middle(mesh, t).minus(frame.origin()));
      cubes
          .computeIfAbsent(
              List.of(
                  Math.round(q.x() / sideMm),
                  Math.round(q.y() / sideMm),
                  Math.round(q.z() / sideMm)),
              cube -> {
                List<Integer> piece = new ArrayList<>();
                inOrder.add(piece);
                return piece;
              })
          .add(t);
    }
    return inOrder.stream().map(piece -> cell(mesh, piece)).filter(c -> c.areaMm2() > 0).toList();
  }

  private static Vec3 middle(TriangleMesh mesh, int t) {
    return mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
  }

  private static Cell cell(TriangleMesh mesh, List<Integer> piece) {
    double area = 0;
    Vec3 middle = Vec3.ZERO;
    Vec3 normal = Vec3.ZERO;
    for (int t : piece) {
      double a = mesh.area(t);
      area += a;
      middle = middle.plus(middle(mesh, t).times(a));
      normal = normal.plus(mesh.doubleAreaNormal(t));
    }
    int nearest = piece.getFirst();
    double least = Double.POSITIVE_INFINITY;
    for (int t : piece) {
      double distance = area > 0 ? middle(mesh, t).distance(middle.times(1 / area)) : 0;
      if (distance < least) {
        least = distance;
        nearest = t;
      }
    }
    double length = normal.length();
    return new Cell(
        nearest,
        middle(mesh, nearest),
        area,
        length > 0 ? normal.times(1 / length) : mesh.doubleAreaNormal(nearest).unit());
  }
}
