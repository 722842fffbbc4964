package rodwork.design.course;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A crown read around the path: in upright half planes about its middle, every few degrees, the
 * outline from the margin up to the cusps. Heights are along the path from the middle of the facial
 * margin [mm]; angles run from mesial, 0°, over facial, 90°, and distal to lingual, 270°.
 */
final class CrownBelt {
  private static final int STEP_DEG = 3;

  /**
   * A wall is looked at over such steps [mm]; it ends where it turns in by more than 45 degrees.
   */
  private static final double WALL_STEP_MM = 0.25;

  private final Vec3 origin;
  private final Vec3 axis;
  private final Vec3 mesial;
  private final Vec3 facial;
  private final List<@Nullable Outline> outlines = new ArrayList<>();

  CrownBelt(TriangleMesh mesh, Tooth tooth, Vec3 axis) {
    this.origin = tooth.axes().origin();
    this.axis = axis;
    this.mesial = tooth.axes().mesial().across(axis).unit();
    Vec3 across = axis.cross(mesial);
    this.facial = across.dot(tooth.axes().facial()) >= 0 ? across : across.times(-1);
    int[] triangles = tooth.copyOfTriangles();
    for (int deg = 0; deg < 360; deg += STEP_DEG) {
      outlines.add(outline(mesh, triangles, Math.toRadians(deg)));
    }
  }

  /**
   * The crown in one half plane.
   *
   * @param low the margin
   * @param high the highest place
   * @param contour height of what sticks out most: the survey line here
   * @param radiusMm how far that sticks out
   */
  record Outline(double low, double high, double contour, double radiusMm, List<double[]> pieces) {
    /**
     * The top of the wall that an arm can lie on: above it the outline turns in towards the biting
     * surface, in a groove between two cusps well below the highest place.
     */
    double wall() {
      double h = contour;
      double r = radiusMm;
      while (h + WALL_STEP_MM <= high) {
        double next = radius(h + WALL_STEP_MM);
        if (Double.isNaN(next) || r - next > WALL_STEP_MM) {
          break;
        }
        h += WALL_STEP_MM;
        r = next;
      }
      return h;
    }

    /** How far the crown sticks out at a height [mm]; NaN beyond its ends. */
    double radius(double height) {
      double most = Double.NaN;
      for (double[] piece : pieces) {
        double from = Math.min(piece[1], piece[3]);
        double to = Math.max(piece[1], piece[3]);
        if (height >= from && height <= to) {
          double share = to > from ? (height - piece[1]) / (piece[3] - piece[1]) : 0;
          double r = piece[0] + share * (piece[2] - piece[0]);
          most = r > most ? r : Double.isNaN(most) ? r : most;
        }
      }
      return most;
    }
  }

  private @Nullable Outline outline(TriangleMesh mesh, int[] triangles, double angle) {
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    List<double[]> pieces = new ArrayList<>();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double contour = 0;
    double radius = 0;
    double[] r = new double[3];
    double[] z = new double[3];
    double[] d = new double[3];
    for (int t : triangles) {
      for (int k = 0; k < 3; k++) {
        Vec3 way = mesh.vertex(mesh.corner(t, k)).minus(origin);
        double x = way.dot(mesial);
        double y = way.dot(facial);
        r[k] = cos * x + sin * y;
        d[k] = cos * y - sin * x;
        z[k] = way.dot(axis);
      }
      double[] piece = new double[4];
      int ends = 0;
      for (int k = 0; k < 3 && ends < 2; k++) {
        int next = (k + 1) % 3;
        if ((d[k] < 0) != (d[next] < 0)) {
          double share = d[k] / (d[k] - d[next]);
          piece[2 * ends] = r[k] + share * (r[next] - r[k]);
          piece[2 * ends + 1] = z[k] + share * (z[next] - z[k]);
          ends++;
        }
      }
      if (ends < 2 || piece[0] <= 0 || piece[2] <= 0) {
        continue;
      }
      pieces.add(piece);
      for (int end = 0; end < 2; end++) {
        low = Math.min(low, piece[2 * end + 1]);
        high = Math.max(high, piece[2 * end + 1]);
        if (piece[2 * end] > radius) {
          radius = piece[2 * end];
          contour = piece[2 * end + 1];
        }
      }
    }
    return pieces.isEmpty() ? null : new Outline(low, high, contour, radius, pieces);
  }

  /** The outline nearest to an angle; null where the crown was not captured. */
  @Nullable Outline at(double deg) {
    int index = (int) Math.round(deg / STEP_DEG);
    return outlines.get(Math.floorMod(index, outlines.size()));
  }

  /** The angle of the nearest outline [degrees]. */
  static double snapped(double deg) {
    return Math.round(deg / STEP_DEG) * (double) STEP_DEG;
  }

  static double stepDeg() {
    return STEP_DEG;
  }

  Vec3 point(double deg, double radiusMm, double height) {
    double angle = Math.toRadians(deg);
    return origin
        .plus(mesial.times(radiusMm * Math.cos(angle)))
        .plus(facial.times(radiusMm * Math.sin(angle)))
        .plus(axis.times(height));
  }

  double height(Vec3 point) {
    return point.minus(origin).dot(axis);
  }

  /** Angle of a point, 0 to 360 [degrees]. */
  double angleDeg(Vec3 point) {
    Vec3 way = point.minus(origin);
    double deg = Math.toDegrees(Math.atan2(way.dot(facial), way.dot(mesial)));
    return deg < 0 ? deg + 360 : deg;
  }

  /** Angle of the middle of an upright surface [degrees]. */
  static double middleDeg(Surface surface) {
    return switch (surface) {
      case MESIAL -> 0;
      case FACIAL -> 90;
      case DISTAL -> 180;
      case LINGUAL -> 270;
      case OCCLUSAL -> throw new IllegalArgumentException("the occlusal surface lies on top");
    };
  }
}
