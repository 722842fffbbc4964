package rodwork.anatomy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;

/**
 * Finds the large planar faces on which a cast can stand: planes that hold a good part of the
 * surface and leave nearly all the rest on one side.
 *
 * <p>Directions come from a histogram of the normals over the sphere, offsets from a histogram
 * along each direction, and each face is then refined by least squares over its own triangles, so
 * that the answer does not depend on the bins. No tooth, ridge or palate is such a face: what is
 * flat there is small or has other parts of the cast on both sides.
 */
final class SupportPlanes {
  /** A face smaller than this, or than this share of the surface, is no base. */
  private static final double LEAST_AREA_MM2 = 120;

  private static final double LEAST_SHARE = 0.025;

  /** Half thickness of the slab around a plane: roughness of ground plaster, scan noise. */
  private static final double SLAB_MM = 0.25;

  /** Normals of single triangles turn this far under 10 µm of noise on 0.15 mm edges [cosine]. */
  private static final double ALIGNED_COSINE = Math.cos(Math.toRadians(18));

  /** Share of the surface that may lie beyond the plane: bubbles and flash. */
  private static final double BEYOND_SHARE = 0.01;

  private static final double BEYOND_MM = 0.6;
  private static final double BIN_MM = 0.1;
  private static final int FACE_BINS = 16;
  private static final int CANDIDATES = 16;

  private final SurfaceNormals surface;

  private SupportPlanes(SurfaceNormals surface) {
    this.surface = surface;
  }

  /** The planes found, the largest first. */
  static List<BasePlane> of(SurfaceNormals surface) {
    return new SupportPlanes(surface).find();
  }

  private List<BasePlane> find() {
    List<BasePlane> found = new ArrayList<>();
    for (Vec3 direction : directions()) {
      BasePlane plane = refine(direction);
      if (plane == null) {
        continue;
      }
      boolean known =
          found.stream()
              .anyMatch(
                  p ->
                      p.outward().angleDegTo(plane.outward()) < 5
                          && Math.abs(p.distance(plane.point())) < 2);
      if (!known) {
        found.add(plane);
      }
    }
    found.sort(Comparator.comparingDouble(BasePlane::areaMm2).reversed());
    return found;
  }

  /** The mean normals of the fullest bins over the sphere, bins as squares on a cube's faces. */
  private List<Vec3> directions() {
    int bins = 6 * FACE_BINS * FACE_BINS;
    double[] filled = new double[bins];
    double[] sum = new double[3 * bins];
    for (int t = 0; t < surface.area.length; t++) {
      double x = surface.normal[3 * t];
      double y = surface.normal[3 * t + 1];
      double z = surface.normal[3 * t + 2];
      double ax = Math.abs(x);
      double ay = Math.abs(y);
      double az = Math.abs(z);
      int bin;
      if (ax >= ay && ax >= az) {
        bin = bin(x > 0 ? 0 : 1, y / ax, z / ax);
      } else if (ay >= az) {
        bin = bin(y > 0 ? 2 : 3, z / ay, x / ay);
      } else {
        bin = bin(z > 0 ? 4 : 5, x / az, y / az);
      }
      double area = surface.area[t];
      filled[bin] += area;
      sum[3 * bin] += area * x;
      sum[3 * bin + 1] += area * y;
      sum[3 * bin + 2] += area * z;
    }
    List<Vec3> directions = new ArrayList<>();
    // A face may sit on the corner of four bins, each with a quarter of it.
    double least = Math.max(LEAST_AREA_MM2, LEAST_SHARE * surface.totalArea) / 4;
    while (directions.size() < CANDIDATES) {
      int best = 0;
      for (int b = 1; b < bins; b++) {
        if (filled[b] > filled[best]) {
          best = b;
        }
      }
      if (filled[best] < least) {
        break;
      }
      filled[best] = 0;
      Vec3 d = new Vec3(sum[3 * best], sum[3 * best + 1], sum[3 * best + 2]);
      if (d.length() > 0) {
        directions.add(d.unit());
      }
    }
    return directions;
  }

  private static int bin(int face, double u, double v) {
    int i = Math.max(0, Math.min(FACE_BINS - 1, (int) ((u + 1) / 2 * FACE_BINS)));
    int j = Math.max(0, Math.min(FACE_BINS - 1, (int) ((v + 1) / 2 * FACE_BINS)));
    return (face * FACE_BINS + i) * FACE_BINS + j;
  }

  private @Nullable BasePlane refine(Vec3 direction) {
    double offset = fullestOffset(direction);
    if (Double.isNaN(offset)) {
      return null;
    }
    Vec3 normal = direction;
    Vec3 point = direction.times(offset);
    double slab = 4 * SLAB_MM;
    for (int round = 0; round < 8; round++) {
      Vec3 fitted = fit(point, normal, slab);
      if (fitted == null) {
        return null;
      }
      point = lastPoint;
      double turn = fitted.angleDegTo(normal);
      normal = fitted;
      slab = Math.max(SLAB_MM, slab * 0.7);
      if (turn < 1e-7 && slab == SLAB_MM) {
        break;
      }
    }
    if (lastArea < Math.max(LEAST_AREA_MM2, LEAST_SHARE * surface.totalArea)) {
      return null;
    }
    double beyond = 0;
    double behind = 0;
    double level = point.dot(normal);
    for (int t = 0; t < surface.area.length; t++) {
      double d = surface.centreAlong(t, normal) - level;
      if (d > BEYOND_MM) {
        beyond += surface.area[t];
      } else if (d < -BEYOND_MM) {
        behind += surface.area[t];
      }
    }
    if (Math.min(beyond, behind) > BEYOND_SHARE * surface.totalArea) {
      return null;
    }
    // The table under a cast may have been scanned with it: its normals point to the cast.
    Vec3 outward = beyond <= behind ? normal : normal.times(-1);
    return new BasePlane(point, outward, lastArea, lastRms);
  }

  /** Where along a direction the most area that faces it lies; NaN where there is too little. */
  private double fullestOffset(Vec3 direction) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < surface.area.length; t++) {
      double d = surface.centreAlong(t, direction);
      low = Math.min(low, d);
      high = Math.max(high, d);
    }
    int bins = (int) Math.min(20_000, (high - low) / BIN_MM + 1);
    double[] filled = new double[bins + 1];
    for (int t = 0; t < surface.area.length; t++) {
      if (surface.normalAlong(t, direction) > ALIGNED_COSINE) {
        int b = (int) ((surface.centreAlong(t, direction) - low) / BIN_MM);
        filled[Math.max(0, Math.min(bins, b))] += surface.area[t];
      }
    }
    // The direction of a bin is off by a few degrees, so that a face spreads over about 1 mm.
    int width = 10;
    double window = 0;
    double best = 0;
    int at = -1;
    for (int b = 0; b <= bins; b++) {
      window += filled[b];
      if (b >= width) {
        window -= filled[b - width];
      }
      if (window > best) {
        best = window;
        at = b;
      }
    }
    return best < LEAST_AREA_MM2 / 2 ? Double.NaN : low + (at - width / 2.0 + 0.5) * BIN_MM;
  }

  private Vec3 lastPoint = Vec3.ZERO;
  private double lastArea;
  private double lastRms;

  /** The least-squares plane of the aligned triangles in the slab; leaves point, area and rms. */
  private @Nullable Vec3 fit(Vec3 point, Vec3 normal, double slab) {
    Vec3 u = normal.anyPerpendicular();
    Vec3 v = normal.cross(u);
    double level = point.dot(normal);
    NormalEquations equations = new NormalEquations(3);
    double[] row = new double[] {0, 0, 1};
    double atU = point.dot(u);
    double atV = point.dot(v);
    double sumU = 0;
    double sumV = 0;
    double area = 0;
    double squares = 0;
    for (int t = 0; t < surface.area.length; t++) {
      double d = surface.centreAlong(t, normal) - level;
      if (Math.abs(d) > slab || surface.normalAlong(t, normal) < ALIGNED_COSINE) {
        continue;
      }
      row[0] = surface.centreAlong(t, u) - atU;
      row[1] = surface.centreAlong(t, v) - atV;
      sumU += surface.area[t] * row[0];
      sumV += surface.area[t] * row[1];
      equations.add(row, d, surface.area[t]);
      area += surface.area[t];
      squares += surface.area[t] * d * d;
    }
    double[] plane = equations.solve();
    if (plane.length == 0 || area < LEAST_AREA_MM2 / 2) {
      return null;
    }
    lastArea = area;
    lastRms = Math.sqrt(squares / area);
    double du = sumU / area;
    double dv = sumV / area;
    double rise = plane[0] * du + plane[1] * dv + plane[2];
    lastPoint = point.plus(u.times(du)).plus(v.times(dv)).plus(normal.times(rise));
    return normal.minus(u.times(plane[0])).minus(v.times(plane[1])).unit();
  }
}
