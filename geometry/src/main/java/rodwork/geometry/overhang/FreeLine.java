package rodwork.geometry.overhang;

import java.util.List;
import rodwork.geometry.mesh.BoundaryLoop;
import rodwork.geometry.mesh.BoundaryLoops;

/**
 * Whether a free line that was found is one that an instrument could use.
 *
 * <p>A depth is geometry; this says where the geometry looks through a hole of the scan, passes
 * inside the body, or lies where no gauge fits.
 */
final class FreeLine {
  /**
   * Crossings this near to the ends of the way do not count [mm]: the point lies on the surface
   * itself, and within the accuracy of a scan a wall touches its own level line.
   */
  private static final double END_MM = 0.03;

  /** How far beyond the boundary of the shadow the free line is looked at [mm]. */
  private static final double BEYOND_MM = 1e-4;

  /** Directions tried on each side of straight outwards, and the angle between them [degrees]. */
  private static final int TURNS = 6;

  private static final double TURN_DEG = 15;

  private final Shadow shadow;
  private final Hole[] holes;

  /** A hole of the mesh in projection: its outline, its bounding box and its greatest height. */
  private record Hole(double[] xy, double minX, double minY, double maxX, double maxY, double top) {
    boolean around(double px, double py) {
      if (px < minX || px > maxX || py < minY || py > maxY) {
        return false;
      }
      boolean in = false;
      for (int i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
        if (xy[i + 1] > py != xy[j + 1] > py
            && px < xy[i] + (py - xy[i + 1]) / (xy[j + 1] - xy[i + 1]) * (xy[j] - xy[i])) {
          in = !in;
        }
      }
      return in;
    }
  }

  FreeLine(CasterMesh mesh, Shadow shadow, BoundaryLoops loops) {
    this.shadow = shadow;
    List<BoundaryLoop> found = loops.holes();
    this.holes = new Hole[found.size()];
    Projection at = shadow.columns.at;
    for (int h = 0; h < holes.length; h++) {
      int n = found.get(h).vertexCount();
      double[] xy = new double[2 * n];
      double minX = Double.POSITIVE_INFINITY;
      double minY = Double.POSITIVE_INFINITY;
      double maxX = Double.NEGATIVE_INFINITY;
      double maxY = Double.NEGATIVE_INFINITY;
      double top = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < n; i++) {
        int v = mesh.placeOf[found.get(h).vertex(i)];
        xy[2 * i] = at.x[v];
        xy[2 * i + 1] = at.y[v];
        minX = Math.min(minX, at.x[v]);
        maxX = Math.max(maxX, at.x[v]);
        minY = Math.min(minY, at.y[v]);
        maxY = Math.max(maxY, at.y[v]);
        top = Math.max(top, at.z[v]);
      }
      holes[h] = new Hole(xy, minX, minY, maxX, maxY, top);
    }
  }

  /** Whether the reading of a search cannot be trusted to be that of the real body. */
  boolean unsure(Shadow.Found f) {
    double dx = f.qx - f.px;
    double dy = f.qy - f.py;
    double d = Math.sqrt(dx * dx + dy * dy);
    double ux = d > 0 ? dx / d : 0;
    double uy = d > 0 ? dy / d : 0;
    for (Hole hole : holes) {
      if (hole.top > f.level && hole.around(f.qx + BEYOND_MM * ux, f.qy + BEYOND_MM * uy)) {
        return true;
      }
    }
    // A level line seen from above is reached from under its own slope: through the body.
    if (f.triangle >= 0 && d > END_MM) {
      return true;
    }
    return d > 2 * END_MM && shadow.crosses(f.px, f.py, f.level, ux, uy, END_MM, d - END_MM, f);
  }

  /** Whether no shank comes near enough to the free line of a search. */
  boolean noGaugeReaches(Shadow.Found f, OverhangLimits limits, Shadow.Found scratch) {
    double dx = f.qx - f.px;
    double dy = f.qy - f.py;
    double straight = Math.atan2(dy, dx);
    double radius = limits.shankRadiusMm();
    for (int out = 2; out >= 0; out--) {
      double away = radius + limits.reachMm() * out / 2;
      for (int i = 0; i <= 2 * TURNS; i++) {
        int turn = i % 2 == 0 ? i / 2 : -(i + 1) / 2;
        double angle = straight + Math.toRadians(turn * TURN_DEG);
        double cx = f.qx + away * Math.cos(angle);
        double cy = f.qy + away * Math.sin(angle);
        if (!shadow.columns.covered(cx, cy, f.level)) {
          shadow.nearest(cx, cy, f.level, radius - 1e-6, -1, scratch);
          if (!scratch.any()) {
            return false;
          }
        }
      }
    }
    return true;
  }
}
