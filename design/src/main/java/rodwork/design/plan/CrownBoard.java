package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.PatchTree;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;

/** One crown as a drawing board, in the tooth's own directions. */
final class CrownBoard {
  /** Rays start this far outside [mm]. */
  private static final double OUTSIDE_MM = 15;

  private static final double STEP_MM = 0.2;

  final Tooth tooth;
  private final TriangleMesh mesh;
  private final PatchTree tree;

  CrownBoard(TriangleMesh mesh, Tooth tooth) {
    this.tooth = tooth;
    this.mesh = mesh;
    this.tree = PatchTree.of(mesh, tooth.copyOfTriangles());
  }

  double halfWidth() {
    return tooth.size().mesiodistalMm() / 2;
  }

  double halfDepth() {
    return tooth.size().faciolingualMm() / 2;
  }

  /** The place of the crown seen from occlusal, to mesial and facial of its middle [mm]. */
  Optional<Vec3> fromAbove(double mesial, double facial) {
    Vec3 start = tooth.axes().toScan(new Vec3(mesial, facial, 2 * OUTSIDE_MM));
    return hit(start, tooth.axes().axis().times(-1));
  }

  /**
   * The place of the crown seen from facial or lingual.
   *
   * @param facial whether from facial
   */
  Optional<Vec3> fromSide(double mesial, double height, boolean facial) {
    double sign = facial ? 1 : -1;
    Vec3 start = tooth.axes().toScan(new Vec3(mesial, sign * OUTSIDE_MM, height));
    return hit(start, tooth.axes().facial().times(-sign));
  }

  /** The place of the crown seen from mesial (1) or distal (−1). */
  Optional<Vec3> fromProximal(double facial, double height, int mesial) {
    Vec3 start = tooth.axes().toScan(new Vec3(mesial * OUTSIDE_MM, facial, height));
    return hit(start, tooth.axes().mesial().times(-mesial));
  }

  /** A crown has no floor: what a ray meets from within is its far side, and not seen from here. */
  private Optional<Vec3> hit(Vec3 start, Vec3 direction) {
    return tree.firstHit(start, direction, 3 * OUTSIDE_MM)
        .filter(q -> mesh.doubleAreaNormal(q.triangle()).dot(direction) < 0)
        .map(SurfacePoint::point);
  }

  /** Height along the axis at which a side of the crown reaches a share of its height [mm]. */
  double heightAt(double mesial, boolean facial, double share) {
    for (double z = -4; z < 16; z += STEP_MM) {
      Optional<Vec3> p = fromSide(mesial, z, facial);
      if (p.isPresent() && tooth.heightShare(p.get()) >= share) {
        return z;
      }
    }
    return share * tooth.size().facialHeightMm();
  }

  /** A closed outline whose points are all on the crown; empty where one misses it. */
  static Optional<Line> outline(int n, IntFunction<Optional<Vec3>> point) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Optional<Vec3> p = point.apply(i);
      if (p.isEmpty()) {
        return Optional.empty();
      }
      points.add(p.get());
    }
    return Optional.of(Line.closed(points));
  }
}
