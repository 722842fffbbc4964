package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.survey.SectionWalk;

/** The cast as a drawing board: curves are laid on it, walked over it, and areas read off it. */
final class Ground {
  /** Points of a curve that was laid stand this close [mm]. */
  private static final double STEP_MM = 0.5;

  /** A border is drawn over a hole or crack of the scan no wider than this [mm]. */
  private static final double GAP_MM = 2.5;

  /** No palate is higher over a chord between its sides, and no crown over a margin [mm]. */
  private static final double ABOVE_MM = 30;

  final Arch arch;
  final ToothLabels labels;
  final TriangleTree tree;
  final ArchFrame frame;

  Ground(Arch arch, ToothLabels labels, TriangleTree tree) {
    this.arch = arch;
    this.labels = labels;
    this.tree = tree;
    this.frame = arch.frame();
  }

  TriangleMesh mesh() {
    return arch.mesh();
  }

  /** A place passed by a walk. */
  record Passed(Vec3 point, int triangle, double lengthMm) {}

  /** The point of the surface nearest to a point. */
  SurfacePoint lay(Vec3 point) {
    return tree.closest(point).orElseThrow();
  }

  boolean isAnatomy(int triangle) {
    return !arch.surface().isBase(triangle);
  }

  /**
   * Walks in the upright plane through a direction until a place fulfils a condition.
   *
   * @param inward horizontal direction of the plane
   * @param towards direction in which to set out
   * @param on what the walk stays on; it ends where that does
   * @return every place passed, the start first; the last one fulfils the condition, unless the
   *     walk ended before: then empty
   */
  Optional<List<Passed>> walk(
      SurfacePoint start,
      Vec3 inward,
      Vec3 towards,
      Predicate<Passed> on,
      Predicate<Passed> until) {
    List<Passed> way = way(start, inward, towards, on, until);
    return until.test(way.getLast()) ? Optional.of(way) : Optional.empty();
  }

  /** The same, with what was walked even where the condition was never fulfilled. */
  List<Passed> way(
      SurfacePoint start,
      Vec3 inward,
      Vec3 towards,
      Predicate<Passed> on,
      Predicate<Passed> until) {
    List<Passed> way = new ArrayList<>();
    way.add(new Passed(start.point(), start.triangle(), 0));
    Vec3 normal = inward.cross(frame.z()).unit();
    new SectionWalk(arch.topology(), start.point(), normal)
        .walk(
            start.triangle(),
            towards,
            (point, _, _, _, triangle, length) -> {
              Passed passed = new Passed(point, triangle, length);
              if (!isAnatomy(triangle) || !on.test(passed)) {
                return false;
              }
              way.add(passed);
              return !until.test(passed);
            });
    return way;
  }

  /**
   * The way over the gum from one point to another, in the upright plane through both.
   *
   * @return from a to b; empty where the scan shows no surface on the way for more than {@link
   *     #GAP_MM}: what lies there is not known, and the nearest place shown is another place
   */
  Optional<List<Vec3>> across(Vec3 a, Vec3 b) {
    Vec3 along = b.minus(a).across(frame.z());
    if (along.length() < STEP_MM) {
      return Optional.of(List.of(a, b));
    }
    Vec3 unit = along.unit();
    double length = along.length();
    SurfacePoint start = lay(a);
    Optional<List<Passed>> way =
        walk(
            start,
            unit,
            unit,
            _ -> true,
            p -> p.point().minus(a).dot(unit) >= length || p.lengthMm() > 3 * length);
    List<Vec3> points = new ArrayList<>();
    boolean arrives =
        way.filter(w -> w.getLast().point().distance(b) < 3 && w.getLast().lengthMm() < 3 * length)
            .isPresent();
    if (arrives) {
      way.orElseThrow().forEach(p -> points.add(p.point()));
      points.set(points.size() - 1, b);
      return Optional.of(thinned(points));
    }
    return seenBetween(a, b);
  }

  /** The same, from what is seen from above: over cracks and small holes of the scan. */
  private Optional<List<Vec3>> seenBetween(Vec3 a, Vec3 b) {
    int n = Math.max(1, (int) Math.ceil(a.distance(b) / STEP_MM));
    List<Vec3> points = new ArrayList<>();
    points.add(a);
    for (int i = 1; i < n; i++) {
      Vec3 p = a.plus(b.minus(a).times((double) i / n));
      tree.firstHit(p.plus(frame.z().times(ABOVE_MM)), frame.z().times(-1), 2 * ABOVE_MM)
          .filter(q -> isAnatomy(q.triangle()) && labels.of(q.triangle()) == ToothLabels.GUM)
          .ifPresent(q -> points.add(q.point()));
      if (horizontal(points.getLast(), p) > GAP_MM) {
        return Optional.empty();
      }
    }
    points.add(b);
    return Optional.of(points);
  }

  /** The gum at a place seen from above; empty where it is not on the scan. */
  Optional<Vec3> under(double x, double y) {
    Vec3 at = frame.origin().plus(frame.x().times(x)).plus(frame.y().times(y));
    return tree.firstHit(at.plus(frame.z().times(2 * ABOVE_MM)), frame.z().times(-1), 4 * ABOVE_MM)
        .filter(q -> isAnatomy(q.triangle()) && labels.of(q.triangle()) == ToothLabels.GUM)
        .map(SurfacePoint::point);
  }

  private double horizontal(Vec3 a, Vec3 b) {
    return b.minus(a).across(frame.z()).length();
  }

  /** The straight line from a to b, each point laid on the surface. */
  List<Vec3> laidStraight(Vec3 a, Vec3 b) {
    int n = Math.max(1, (int) Math.ceil(a.distance(b) / STEP_MM));
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i <= n; i++) {
      points.add(lay(a.plus(b.minus(a).times((double) i / n))).point());
    }
    return points;
  }

  /** Points no closer than the step, both ends kept. */
  static List<Vec3> thinned(List<Vec3> points) {
    List<Vec3> kept = new ArrayList<>();
    for (Vec3 p : points) {
      if (kept.isEmpty() || kept.getLast().distance(p) >= STEP_MM) {
        kept.add(p);
      }
    }
    if (!kept.getLast().equals(points.getLast())) {
      kept.add(points.getLast());
    }
    return kept;
  }

  /**
   * A closed curve through corners, the ways between them laid on the surface.
   *
   * <p>Ways shorter than the step stay straight.
   */
  Line laidLoop(List<Vec3> corners) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      List<Vec3> way = laidStraight(corners.get(i), corners.get((i + 1) % corners.size()));
      points.addAll(way.subList(0, way.size() - 1));
    }
    return Line.closed(points);
  }

  /** Triangles of gum that face the occlusal side and lie, seen from above, within a loop. */
  List<Integer> within(Line loop) {
    return CoveredGum.within(arch, labels, loop);
  }

  double areaMm2(List<Integer> triangles) {
    return triangles.stream().mapToDouble(mesh()::area).sum();
  }

  /** Seen from above in the arch frame [mm]. */
  double[] plan(Vec3 point) {
    Vec3 d = point.minus(frame.origin());
    return new double[] {d.dot(frame.x()), d.dot(frame.y())};
  }

  /** From the front to the back of points, seen from above [mm]. */
  double depthMm(List<Vec3> points) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec3 p : points) {
      double y = plan(p)[1];
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
    return Math.max(0, high - low);
  }

  /** Area of a closed curve seen from above [mm²]. */
  double planAreaMm2(List<Vec3> loop) {
    double twice = 0;
    for (int i = 0; i < loop.size(); i++) {
      double[] a = plan(loop.get(i));
      double[] b = plan(loop.get((i + 1) % loop.size()));
      twice += a[0] * b[1] - a[1] * b[0];
    }
    return Math.abs(twice) / 2;
  }

  /** Whether a point lies on the patient's right. */
  boolean onRight(Vec3 point) {
    return plan(point)[0] < 0 == (frame.jaw() != Jaw.LOWER);
  }

  static boolean contains(List<double[]> polygon, double[] at) {
    boolean inside = false;
    for (int i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
      double[] a = polygon.get(i);
      double[] b = polygon.get(j);
      if (a[1] > at[1] != b[1] > at[1]
          && at[0] < (b[0] - a[0]) * (at[1] - a[1]) / (b[1] - a[1]) + a[0]) {
        inside = !inside;
      }
    }
    return inside;
  }
}
