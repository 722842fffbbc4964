package rodwork.survey.tripod;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.survey.Survey;
import rodwork.survey.Surveyor;

/**
 * Where tripod marks can be set at one path: the surfaces that an upright rod touches, neither too
 * flat nor too steep, away from the rim of the scan and from the plaster base. Proposals keep off
 * what will be changed as well; a person may move a mark there.
 */
public final class TripodPlaces {
  private static final double LEVEL_STEP_MM = 0.5;

  /** Places closer together than this are one place. */
  private static final double PLACE_MM = 2.5;

  /** Places looked at on one level; the outermost are kept. */
  private static final int MOST_PLACES = 60;

  private final TriangleMesh mesh;
  private final VertexNormals normals;
  private final Vec3 axis;
  private final TripodRules rules;
  private final double[] height;

  /** The triangles on which a mark may be set. */
  private final boolean[] open;

  public TripodPlaces(Surveyor surveyor, Survey survey, TripodRules rules) {
    this.mesh = surveyor.topology().mesh();
    this.normals = surveyor.normals();
    this.axis = survey.axis();
    this.rules = rules;
    height = new double[mesh.vertexCount()];
    boolean[] fit = new boolean[mesh.vertexCount()];
    boolean[] rim = nearRim(surveyor, rules.fromRim().value());
    for (int v = 0; v < height.length; v++) {
      height[v] = mesh.vertex(v).dot(axis);
      double slope = slopeDeg(normals.normal(v));
      fit[v] =
          survey.depth(v) == 0
              && !rim[v]
              && slope >= rules.flattest().value()
              && slope <= rules.steepest().value();
    }
    open = new boolean[mesh.triangleCount()];
    for (int t = 0; t < open.length; t++) {
      open[t] =
          fit[mesh.corner(t, 0)]
              && fit[mesh.corner(t, 1)]
              && fit[mesh.corner(t, 2)]
              && !surveyor.surface().isBase(t);
    }
  }

  private double slopeDeg(Vec3 normal) {
    double angle = normal.angleDegTo(axis);
    return Math.min(angle, 180 - angle);
  }

  /** Vertices within reach of a boundary of the scan, or of the plaster base. */
  private static boolean[] nearRim(Surveyor surveyor, double reachMm) {
    MeshTopology topology = surveyor.topology();
    TriangleMesh mesh = topology.mesh();
    List<Vec3> rim = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      boolean base = surveyor.surface().isBase(t);
      for (int k = 0; k < 3; k++) {
        int other = topology.neighbour(t, k);
        if (other < 0 || (base && !surveyor.surface().isBase(other))) {
          rim.add(mesh.vertex(mesh.corner(t, k)));
          rim.add(mesh.vertex(mesh.corner(t, (k + 1) % 3)));
        }
      }
    }
    Map<Long, List<Vec3>> cells = new HashMap<>();
    for (Vec3 p : rim) {
      cells.computeIfAbsent(cell(p, reachMm, 0, 0, 0), k -> new ArrayList<>()).add(p);
    }
    boolean[] near = new boolean[mesh.vertexCount()];
    for (int v = 0; v < near.length && !rim.isEmpty(); v++) {
      Vec3 p = mesh.vertex(v);
      for (int k = 0; k < 27 && !near[v]; k++) {
        List<Vec3> some = cells.get(cell(p, reachMm, k % 3 - 1, k / 3 % 3 - 1, k / 9 - 1));
        near[v] = some != null && some.stream().anyMatch(q -> q.distance(p) < reachMm);
      }
    }
    return near;
  }

  private static long cell(Vec3 p, double side, int dx, int dy, int dz) {
    long i = (long) Math.floor(p.x() / side) + dx;
    long j = (long) Math.floor(p.y() / side) + dy;
    long k = (long) Math.floor(p.z() / side) + dz;
    return (i & 0x1fffff) << 42 | (j & 0x1fffff) << 21 | (k & 0x1fffff);
  }

  /**
   * The three places from which the path is found again most surely.
   *
   * @param unchanged the triangles that no preparation will change, as {@link Unprepared} tells
   *     them: the first under which there are three places counts
   * @throws rodwork.geometry.Refusal if there are none under any
   */
  public Tripod best(List<IntPredicate> unchanged, Watch watch) {
    for (IntPredicate kept : unchanged) {
      boolean[] free = open.clone();
      for (int t = 0; t < free.length; t++) {
        free[t] &= kept.test(t);
      }
      Tripod best = best(free, watch);
      if (best != null) {
        return best;
      }
    }
    throw TripodProblem.NO_PLACE.with(
        rules.flattest().value(), rules.steepest().value(), rules.differ().value());
  }

  private @Nullable Tripod best(boolean[] free, Watch watch) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < free.length; t++) {
      if (free[t]) {
        for (int k = 0; k < 3; k++) {
          low = Math.min(low, height[mesh.corner(t, k)]);
          high = Math.max(high, height[mesh.corner(t, k)]);
        }
      }
    }
    Tripod best = null;
    double bestDeg = Double.POSITIVE_INFINITY;
    for (double level = low + LEVEL_STEP_MM / 2; level < high; level += LEVEL_STEP_MM) {
      watch.check();
      watch.progress("looking for tripod marks", (level - low) / (high - low));
      Tripod here = bestAt(level, outermost(places(free, level)));
      if (here != null) {
        double deg = here.axisErrorDeg(rules.picking().value());
        if (deg < bestDeg) {
          bestDeg = deg;
          best = here;
        }
      }
    }
    return best;
  }

  private @Nullable Tripod bestAt(double level, List<TripodMark> places) {
    Tripod best = null;
    double bestDeg = Double.POSITIVE_INFINITY;
    int n = places.size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        for (int k = j + 1; k < n; k++) {
          Tripod three =
              new Tripod(axis, level, List.of(places.get(i), places.get(j), places.get(k)));
          if (three.leastDifferenceMm() >= rules.differ().value()) {
            double deg = three.axisErrorDeg(rules.picking().value());
            if (deg < bestDeg) {
              bestDeg = deg;
              best = three;
            }
          }
        }
      }
    }
    return best;
  }

  /** Places of a level, the one with the middling slope of each neighbourhood. */
  private List<TripodMark> places(boolean[] free, double level) {
    double middling = (rules.flattest().value() + rules.steepest().value()) / 2;
    Map<Long, TripodMark> places = new HashMap<>();
    for (int t = 0; t < free.length; t++) {
      TripodMark mark = free[t] ? crossing(t, level) : null;
      if (mark != null) {
        places.merge(
            cell(mark.point(), PLACE_MM, 0, 0, 0),
            mark,
            (a, b) ->
                Math.abs(a.slopeDeg() - middling) <= Math.abs(b.slopeDeg() - middling) ? a : b);
      }
    }
    List<TripodMark> sorted = new ArrayList<>(places.values());
    sorted.sort(Comparator.comparingInt(TripodMark::triangle));
    return sorted;
  }

  private static List<TripodMark> outermost(List<TripodMark> places) {
    if (places.size() <= MOST_PLACES) {
      return places;
    }
    Vec3 sum = Vec3.ZERO;
    for (TripodMark m : places) {
      sum = sum.plus(m.point());
    }
    Vec3 middle = sum.times(1.0 / places.size());
    return places.stream()
        .sorted(Comparator.comparingDouble((TripodMark m) -> -m.point().distance(middle)))
        .limit(MOST_PLACES)
        .toList();
  }

  /** The middle of the level line in a triangle; null where the triangle does not reach it. */
  private @Nullable TripodMark crossing(int t, double level) {
    Vec3 sum = Vec3.ZERO;
    int found = 0;
    for (int k = 0; k < 3; k++) {
      int a = mesh.corner(t, k);
      int b = mesh.corner(t, k == 2 ? 0 : k + 1);
      if (height[a] >= level != height[b] >= level) {
        double s = (level - height[a]) / (height[b] - height[a]);
        sum = sum.plus(mesh.vertex(a).plus(mesh.vertex(b).minus(mesh.vertex(a)).times(s)));
        found++;
      }
    }
    if (found != 2) {
      return null;
    }
    Vec3 normal = Vec3.ZERO;
    for (int k = 0; k < 3; k++) {
      normal = normal.plus(normals.normal(mesh.corner(t, k)));
    }
    return new TripodMark(sum.times(0.5), t, slopeDeg(normal));
  }

  /**
   * The tripod with one mark moved to the place on its level nearest to a wanted one.
   *
   * @param which mark, 0 to 2
   * @param wanted where a person would have it, scan frame [mm]
   * @param reachMm how far from there the level line may be [mm]
   * @throws rodwork.geometry.Refusal if no surface fit for a mark is near
   */
  public Tripod moved(Tripod tripod, int which, Vec3 wanted, double reachMm) {
    Optional<TripodMark> nearest =
        java.util.stream.IntStream.range(0, open.length)
            .filter(t -> open[t])
            .mapToObj(t -> Optional.ofNullable(crossing(t, tripod.heightMm())))
            .flatMap(Optional::stream)
            .min(Comparator.comparingDouble(m -> m.point().distance(wanted)));
    if (nearest.isEmpty() || nearest.get().point().distance(wanted) > reachMm) {
      throw TripodProblem.OFF_SURFACE.with(reachMm);
    }
    List<TripodMark> marks = new ArrayList<>(tripod.marks());
    marks.set(which, nearest.get());
    return new Tripod(tripod.axis(), tripod.heightMm(), marks);
  }
}
