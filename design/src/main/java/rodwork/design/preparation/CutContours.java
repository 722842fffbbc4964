package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.List;
import rodwork.design.cut.PreparedCast;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Lines of equal depth of a cut, on the crown as it stands: how far it reaches, and where it takes
 * most, as heights on a map.
 */
public final class CutContours {
  /** What is shallower cannot be told from the crown as it is [mm]. */
  public static final double EDGE_MM = 0.02;

  private static final double FINE_STEP_MM = 0.1;
  private static final double FINE_TO_MM = 0.5;
  private static final double COARSE_STEP_MM = 0.5;

  private CutContours() {}

  /**
   * A straight piece of a contour, on one triangle; scan frame [mm].
   *
   * @param from its first end
   * @param to its second end
   */
  public record Piece(Vec3 from, Vec3 to) {}

  /**
   * A contour.
   *
   * @param depthMm how deep the cut is along it
   * @param pieces in no order
   */
  public record Contour(double depthMm, List<Piece> pieces) {
    public Contour {
      pieces = List.copyOf(pieces);
    }
  }

  /**
   * The contours of one cut: its edge, then every tenth of a millimetre down to 0.5 mm, then every
   * half millimetre. A depth that no triangle crosses has none.
   *
   * @param mesh of the cast as it stands
   */
  public static List<Contour> of(TriangleMesh mesh, Applied one) {
    double deepest = PreparedCast.taken(mesh, one).greatestMm();
    List<Contour> contours = new ArrayList<>();
    for (double depth : levels(deepest)) {
      List<Piece> pieces = new ArrayList<>();
      for (int t : one.tooth().copyOfTriangles()) {
        piece(mesh, one, t, depth, pieces);
      }
      if (!pieces.isEmpty()) {
        contours.add(new Contour(depth, pieces));
      }
    }
    return contours;
  }

  private static List<Double> levels(double deepest) {
    List<Double> levels = new ArrayList<>();
    levels.add(EDGE_MM);
    for (int i = 1; i * FINE_STEP_MM < Math.min(deepest, FINE_TO_MM - FINE_STEP_MM / 2); i++) {
      levels.add(i * FINE_STEP_MM);
    }
    for (int i = 1; i * COARSE_STEP_MM < deepest; i++) {
      levels.add(i * COARSE_STEP_MM);
    }
    return levels;
  }

  /** Depth is taken as linear within a triangle. */
  private static void piece(
      TriangleMesh mesh, Applied one, int triangle, double depth, List<Piece> pieces) {
    Vec3[] corner = new Vec3[3];
    double[] above = new double[3];
    for (int k = 0; k < 3; k++) {
      corner[k] = mesh.vertex(mesh.corner(triangle, k));
      above[k] = corner[k].distance(one.cut().after(corner[k])) - depth;
    }
    List<Vec3> ends = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      int next = (k + 1) % 3;
      if ((above[k] < 0) != (above[next] < 0)) {
        double share = above[k] / (above[k] - above[next]);
        ends.add(corner[k].plus(corner[next].minus(corner[k]).times(share)));
      }
    }
    if (ends.size() == 2) {
      pieces.add(new Piece(ends.getFirst(), ends.getLast()));
    }
  }
}
