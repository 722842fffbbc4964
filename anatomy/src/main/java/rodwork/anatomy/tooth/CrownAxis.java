package rodwork.anatomy.tooth;

import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The long axis of a tooth, as far as its crown tells: roots are not on a scan.
 *
 * <p>To facial and lingual it leans so that the facial and the lingual wall lean alike against it;
 * in molars the occlusal surface has half a say. To mesial and distal, where contacts hide the
 * walls, a back tooth stands upright on its occlusal surface, and a front tooth leans as the way
 * from the middle of the margin to the middle of the edge. Everything is read against the occlusal
 * direction once: seeking the walls anew about the axis found runs away on low, broad crowns.
 *
 * <p>Measured on the demo casts, whose axes are known: see DentitionOnDemoTest. Tried and lost
 * there: the plane of the margin (39° off beside spaces), the middles of cross-sections (70°).
 */
final class CrownAxis {
  /** Share of the crown's height, from its top, that counts as the top. */
  private static final double TOP = 0.3;

  /** The occlusal surface is sought in this share of the crown's height, from its top. */
  private static final double OCCLUSAL = 0.5;

  /** Cosine to a direction from which a triangle faces it. */
  private static final double FACES = 0.6;

  /** Walls are steeper than this [cosine to the occlusal direction]. */
  private static final double STEEP = 0.7;

  /** A wall with less than this share of the surface of the one across is not fit to be read. */
  private static final double LEAST_WALL = 0.04;

  /** No tooth is taken to lean more than this to any side [degrees]. */
  private static final double GREATEST_LEAN_DEG = 40;

  private CrownAxis() {}

  /**
   * The axis of a crown.
   *
   * @param outward out of the arch at this tooth, unit vector across {@code up}
   * @param up occlusal direction of the arch
   */
  static Vec3 of(
      ToothNumber number, CrownPatch crown, GingivalMargin margin, Vec3 outward, Vec3 up) {
    Vec3 along = outward.cross(up);
    Sums sums = new Sums(crown, outward, along, up);
    Vec3 rise = sums.topMiddle(crown).minus(margin.middle());
    double height = Math.max(1, rise.dot(up));
    double facial = sums.wallLean(rise.dot(outward) / height);
    if (number.isMolar()) {
      facial = (facial + sums.occlusalFacial()) / 2;
    }
    double mesial = number.isAnterior() ? rise.dot(along) / height : sums.occlusalAlong();
    double most = Math.tan(Math.toRadians(GREATEST_LEAN_DEG));
    return up.plus(outward.times(Math.clamp(facial, -most, most)))
        .plus(along.times(Math.clamp(mesial, -most, most)))
        .unit();
  }

  /** What one pass over the crown sums up. Leans are tangents, towards outward and along. */
  private static final class Sums {
    private final Vec3 outward;
    private final Vec3 up;
    private Vec3 facialWall = Vec3.ZERO;
    private Vec3 lingualWall = Vec3.ZERO;
    private Vec3 top = Vec3.ZERO;
    private double topArea;
    private double w;
    private double f;
    private double g;
    private double h;
    private double ff;
    private double fg;
    private double gg;
    private double fh;
    private double gh;

    Sums(CrownPatch crown, Vec3 outward, Vec3 along, Vec3 up) {
      this.outward = outward;
      this.up = up;
      TriangleMesh mesh = crown.topology().mesh();
      Vec3 middle = crown.centroid();
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int t : crown.triangles()) {
        double height = mesh.vertex(mesh.corner(t, 0)).minus(middle).dot(up);
        low = Math.min(low, height);
        high = Math.max(high, height);
      }
      for (int t : crown.triangles()) {
        Vec3 n = mesh.doubleAreaNormal(t);
        double area = n.length();
        Vec3 c = mesh.pointOn(t, 1 / 3.0, 1 / 3.0).minus(middle);
        double rise = c.dot(up);
        if (rise >= high - TOP * (high - low)) {
          top = top.plus(c.times(area));
          topArea += area;
        }
        if (Math.abs(n.dot(up)) < STEEP * area) {
          double out = n.dot(outward);
          if (out > FACES * area) {
            facialWall = facialWall.plus(n);
          } else if (out < -FACES * area) {
            lingualWall = lingualWall.plus(n);
          }
        }
        if (n.dot(up) > FACES * area && rise >= high - OCCLUSAL * (high - low)) {
          occlusal(area, c.dot(outward), c.dot(along), rise);
        }
      }
    }

    private void occlusal(double area, double out, double way, double rise) {
      w += area;
      f += area * out;
      g += area * way;
      h += area * rise;
      ff += area * out * out;
      fg += area * out * way;
      gg += area * way * way;
      fh += area * out * rise;
      gh += area * way * rise;
    }

    Vec3 topMiddle(CrownPatch crown) {
      return topArea > 0 ? crown.centroid().plus(top.times(1 / topArea)) : crown.centroid();
    }

    double wallLean(double otherwise) {
      double a = facialWall.length();
      double b = lingualWall.length();
      if (!(Math.min(a, b) > LEAST_WALL * Math.max(a, b))) {
        return otherwise;
      }
      Vec3 across = facialWall.times(1 / a).minus(lingualWall.times(1 / b));
      return -across.dot(up) / across.dot(outward);
    }

    double occlusalFacial() {
      return -slopes()[0];
    }

    double occlusalAlong() {
      return -slopes()[1];
    }

    /** Slopes to facial and along of the plane through what faces up; 0 where nothing does. */
    private double[] slopes() {
      if (!(w > 0)) {
        return new double[2];
      }
      double a = ff - f * f / w;
      double b = fg - f * g / w;
      double c = gg - g * g / w;
      double p = fh - f * h / w;
      double q = gh - g * h / w;
      double det = a * c - b * b;
      return det > 1e-9 * Math.max(a, c) * Math.max(a, c)
          ? new double[] {(p * c - q * b) / det, (q * a - p * b) / det}
          : new double[2];
    }
  }
}
