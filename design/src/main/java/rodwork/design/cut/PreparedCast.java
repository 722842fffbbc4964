package rodwork.design.cut;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import rodwork.anatomy.Arch;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** The cast with cuts: the triangles of the scan, their vertices moved. */
public final class PreparedCast {
  private PreparedCast() {}

  /**
   * A cut and the tooth that it may touch.
   *
   * @param tooth only its own vertices move
   * @param cut the shape
   */
  public record Applied(Tooth tooth, Cut cut) {}

  /**
   * What a cut takes, measured on the vertices.
   *
   * @param greatestMm farthest that a vertex moves
   * @param areaMm2 of the surface that moves
   * @param volumeMm3 taken
   */
  public record Taken(double greatestMm, double areaMm2, double volumeMm3) {}

  /** The arch after the cuts, one after the other. */
  public static Arch of(Arch arch, List<Applied> cuts) {
    TriangleMesh mesh = mesh(arch.mesh(), cuts);
    return new Arch(MeshTopology.of(mesh), arch.surface(), arch.frame());
  }

  /** The mesh after the cuts. */
  public static TriangleMesh mesh(TriangleMesh mesh, List<Applied> cuts) {
    double[] xyz = mesh.copyOfCoordinates();
    for (Applied one : cuts) {
      BitSet own = vertices(mesh, one.tooth);
      for (int v = own.nextSetBit(0); v >= 0; v = own.nextSetBit(v + 1)) {
        Vec3 after = one.cut.after(new Vec3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]));
        xyz[3 * v] = after.x();
        xyz[3 * v + 1] = after.y();
        xyz[3 * v + 2] = after.z();
      }
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }

  /** The vertices of a crown, those of its margin among them. */
  private static BitSet vertices(TriangleMesh mesh, Tooth tooth) {
    BitSet own = new BitSet();
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        own.set(mesh.corner(t, k));
      }
    }
    return own;
  }

  /** What one cut takes from a cast. */
  public static Taken taken(TriangleMesh mesh, Applied one) {
    double greatest = 0;
    double area = 0;
    double volume = 0;
    for (int t : one.tooth.copyOfTriangles()) {
      double mean = 0;
      for (int k = 0; k < 3; k++) {
        Vec3 p = mesh.vertex(mesh.corner(t, k));
        double way = p.distance(one.cut.after(p));
        greatest = Math.max(greatest, way);
        mean += way / 3;
      }
      if (mean > 0) {
        double touched = mesh.area(t);
        area += touched;
        volume += touched * mean;
      }
    }
    return new Taken(greatest, area, volume);
  }

  /** The greatest depth of a cut [mm], on the vertices and along the lines that it was laid by. */
  public static double enamel(TriangleMesh mesh, Applied one, double alongLinesMm) {
    return Math.max(alongLinesMm, taken(mesh, one).greatestMm());
  }

  /**
   * The section of a crown before and after, in its own plane.
   *
   * @param before pieces of the line of the crown
   * @param after the same pieces after the cuts
   */
  public record Before(List<Piece> before, List<Piece> after) {
    public Before {
      before = List.copyOf(before);
      after = List.copyOf(after);
    }
  }

  /**
   * A straight piece of a section [mm]: outward, and along the path.
   *
   * @param out of its first end
   * @param up of its first end
   * @param out2 of its second end
   * @param up2 of its second end
   */
  public record Piece(double out, double up, double out2, double up2) {}

  public static Before section(TriangleMesh mesh, Applied one, CutFrame frame) {
    List<Piece> before = new ArrayList<>();
    List<Piece> after = new ArrayList<>();
    for (int t : one.tooth.copyOfTriangles()) {
      List<Vec3> cut = new ArrayList<>();
      List<Vec3> moved = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        Vec3 a = mesh.vertex(mesh.corner(t, k));
        Vec3 b = mesh.vertex(mesh.corner(t, (k + 1) % 3));
        double from = frame.local(a).x();
        double to = frame.local(b).x();
        if ((from < 0) != (to < 0)) {
          double share = from / (from - to);
          Vec3 p = a.plus(b.minus(a).times(share));
          cut.add(frame.local(p));
          moved.add(frame.local(one.cut.after(p)));
        }
      }
      if (cut.size() == 2) {
        before.add(piece(cut));
        after.add(piece(moved));
      }
    }
    return new Before(before, after);
  }

  private static Piece piece(List<Vec3> ends) {
    return new Piece(
        ends.getFirst().y(), ends.getFirst().z(), ends.getLast().y(), ends.getLast().z());
  }
}
