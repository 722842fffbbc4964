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
  private final PatchTree tree;

  CrownBoard(TriangleMesh mesh, Tooth tooth) {
    this.tooth = tooth;
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

  private Optional<Vec3> hit(Vec3 start, Vec3 direction) {
    return tree.firstHit(start, direction, 3 * OUTSIDE_MM).map(SurfacePoint::point);
  }

  /** The point of the crown nearest to a point. */
  Vec3 nearest(Vec3 point) {
    return tree.closest(point, 50).map(SurfacePoint::point).orElse(point);
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

  /**
   * A curve on one side through given places.
   *
   * @param mesial to mesial [mm], of each place
   * @param height along the axis [mm]
   */
  List<Vec3> curve(double[] mesial, double[] height, boolean facial) {
    return bezier(
        mesial,
        height,
        at ->
            fromSide(at[0], at[1], facial)
                .orElseGet(
                    () ->
                        nearest(
                            tooth
                                .axes()
                                .toScan(new Vec3(at[0], (facial ? 1 : -1) * halfDepth(), at[1])))));
  }

  /** A quadratic curve through three places of a plane, each point lifted onto a surface. */
  static List<Vec3> bezier(
      double[] x, double[] z, java.util.function.Function<double[], Vec3> lifted) {
    List<Vec3> points = new ArrayList<>();
    int n = 24;
    for (int i = 0; i <= n; i++) {
      double t = (double) i / n;
      // Lagrange through the three places at t = 0, 1/2, 1.
      double a = 2 * (t - 0.5) * (t - 1);
      double b = -4 * t * (t - 1);
      double c = 2 * t * (t - 0.5);
      points.add(
          lifted.apply(
              new double[] {a * x[0] + b * x[1] + c * x[2], a * z[0] + b * z[1] + c * z[2]}));
    }
    return points;
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
