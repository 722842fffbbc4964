package rodwork.anatomy;

import java.util.BitSet;
import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;

/**
 * Tells the plaster base of a cast from its anatomy.
 *
 * <p>The faces on which the cast can stand ({@link SupportPlanes}) are base. From the largest, the
 * floor, the walls are followed upwards: a wall is trimmed flat or sawn along a curve, but always
 * straight up and down, so each of its triangles must keep the slope against the floor that the
 * wall has at its foot, while it may turn about the floor's normal. Gum does not keep a slope for
 * long. Last come the closed parts that the base encloses: the inside of a hollow model, and
 * crumbs.
 */
final class BaseFinder {
  /** A wall leans at most this far from the floor's normal [sine of 35°]. */
  private static final double WALL_LEAN_SINE = Math.sin(Math.toRadians(35));

  /** How far a wall's slope may depart from that at its foot [sine, about 7°]. */
  private static final double SLOPE_TOLERANCE = Math.sin(Math.toRadians(7));

  /** A planar face is followed across this much unevenness [cosine of 10°]. */
  private static final double FACE_COSINE = Math.cos(Math.toRadians(10));

  /** A joined patch on a plane smaller than this share of it is not part of the face. */
  private static final double LEAST_PATCH = 0.2;

  /** Chamfers, fillets and flash between floor and wall lie within this of the floor [mm]. */
  private static final double FOOT_MM = 1.0;

  /** The normals are evened out over about this radius [mm]. */
  private static final double SMOOTH_MM = 0.6;

  /** Anatomy smaller than this and shut in by the base is a crumb of it [mm²]. */
  private static final double CRUMB_MM2 = 30;

  /** A surface is open where its normals sum up to more than this share of its area. */
  private static final double OPEN_SHARE = 0.1;

  /** Where less than this share is left as anatomy, what was found was no base. */
  private static final double LEAST_ANATOMY = 0.1;

  private final MeshTopology topology;
  private final SurfaceNormals surface;
  private final List<BasePlane> planes;
  private final BitSet base = new BitSet();
  private final int[] queue;

  BaseFinder(MeshTopology topology) {
    this.topology = topology;
    this.surface = new SurfaceNormals(topology.mesh());
    List<BasePlane> found = SupportPlanes.of(surface);
    this.queue = new int[found.isEmpty() ? 0 : surface.area.length];
    if (!found.isEmpty()) {
      int rounds = (int) Math.ceil(SMOOTH_MM / Math.max(0.1, surface.meanEdge()));
      surface.smooth(topology, rounds);
      found.forEach(this::takeFace);
      if (isFloor(found.getFirst())) {
        takeWalls(found.getFirst());
      }
      takeEnclosed(found.getFirst());
      if (baseArea() > (1 - LEAST_ANATOMY) * surface.totalArea) {
        base.clear();
        found = List.of();
      }
    }
    this.planes = found;
  }

  BitSet base() {
    return base;
  }

  List<BasePlane> planes() {
    return planes;
  }

  private double baseArea() {
    return base.stream().mapToDouble(t -> surface.area[t]).sum();
  }

  /**
   * The joined patches of triangles on a plane that are a good part of it, and what is joined to
   * them, faces the same way and lies close to it. Small patches are crowns or gum that the plane
   * of a wall passes through.
   */
  private void takeFace(BasePlane plane) {
    double least = LEAST_PATCH * plane.areaMm2();
    double level = plane.point().dot(plane.outward());
    BitSet seen = new BitSet();
    for (int seed = 0; seed < surface.area.length; seed++) {
      if (seen.get(seed) || !onFace(plane, level, seed, 3 * plane.rmsMm() + 0.1)) {
        continue;
      }
      int filled = 0;
      seen.set(seed);
      queue[filled++] = seed;
      double area = 0;
      for (int next = 0; next < filled; next++) {
        int t = queue[next];
        area += surface.area[t];
        for (int k = 0; k < 3; k++) {
          int u = topology.neighbour(t, k);
          if (u >= 0 && !seen.get(u) && onFace(plane, level, u, FOOT_MM)) {
            seen.set(u);
            queue[filled++] = u;
          }
        }
      }
      if (area > least) {
        for (int i = 0; i < filled; i++) {
          base.set(queue[i]);
        }
      }
    }
  }

  private boolean onFace(BasePlane plane, double level, int t, double within) {
    return Math.abs(surface.centreAlong(t, plane.outward()) - level) < within
        && Math.abs(surface.normalAlong(t, plane.outward())) > FACE_COSINE;
  }

  private void takeWalls(BasePlane floor) {
    double level = floor.point().dot(floor.outward());
    double[] slope = new double[surface.area.length];
    int filled = 0;
    for (int t = base.nextSetBit(0); t >= 0; t = base.nextSetBit(t + 1)) {
      slope[t] = Double.NaN;
      queue[filled++] = t;
    }
    for (int next = 0; next < filled; next++) {
      int t = queue[next];
      for (int k = 0; k < 3; k++) {
        int u = topology.neighbour(t, k);
        if (u < 0 || base.get(u)) {
          continue;
        }
        double lean = surface.normalAlong(u, floor.outward());
        double depth = level - surface.centreAlong(u, floor.outward());
        boolean foot = depth < FOOT_MM;
        boolean wall =
            Double.isNaN(slope[t])
                ? Math.abs(lean) < WALL_LEAN_SINE && depth < 3 * FOOT_MM
                : Math.abs(lean - slope[t]) < SLOPE_TOLERANCE;
        if (foot || wall) {
          slope[u] = foot ? Double.NaN : Double.isNaN(slope[t]) ? lean : slope[t];
          base.set(u);
          queue[filled++] = u;
        }
      }
    }
  }

  /**
   * Whether the largest face is the floor and not a wall: the floor of a closed cast is its largest
   * face; where the scan has no floor, the surface as a whole faces up, and its walls do not look
   * down.
   */
  private boolean isFloor(BasePlane plane) {
    Vec3 sum = Vec3.ZERO;
    for (int t = 0; t < surface.area.length; t++) {
      sum = sum.plus(surface.normal(t).times(surface.area[t]));
    }
    return sum.length() < OPEN_SHARE * surface.totalArea
        || Math.abs(sum.unit().dot(plane.outward())) > 0.5;
  }

  /**
   * Joined parts of the anatomy other than the main one go to the base where they are crumbs, or
   * where they look down: the inside of a hollow model.
   */
  private void takeEnclosed(BasePlane floor) {
    int triangles = surface.area.length;
    int[] part = new int[triangles];
    double[] areas = new double[triangles + 1];
    double[] down = new double[triangles + 1];
    boolean[] touchesBase = new boolean[triangles + 1];
    int parts = 0;
    for (int seed = 0; seed < triangles; seed++) {
      if (part[seed] != 0 || base.get(seed)) {
        continue;
      }
      part[seed] = ++parts;
      int filled = 0;
      queue[filled++] = seed;
      for (int next = 0; next < filled; next++) {
        int t = queue[next];
        areas[parts] += surface.area[t];
        down[parts] += surface.area[t] * surface.normalAlong(t, floor.outward());
        for (int k = 0; k < 3; k++) {
          int u = topology.neighbour(t, k);
          if (u < 0) {
            continue;
          }
          if (base.get(u)) {
            touchesBase[parts] = true;
          } else if (part[u] == 0) {
            part[u] = parts;
            queue[filled++] = u;
          }
        }
      }
    }
    int main = 0;
    for (int p = 1; p <= parts; p++) {
      boolean better = (down[p] < 0) == (down[main] < 0) ? areas[p] > areas[main] : down[p] < 0;
      main = main == 0 || better ? p : main;
    }
    for (int t = 0; t < triangles; t++) {
      int p = part[t];
      if (p != 0 && p != main && touchesBase[p] && (areas[p] < CRUMB_MM2 || down[p] > 0)) {
        base.set(t);
      }
    }
  }
}
