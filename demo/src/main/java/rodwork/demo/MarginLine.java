package rodwork.demo;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * The line round a tooth where it leaves the gum.
 *
 * <p>Found on the tooth's own surface, in planes through its axis: the lowest place that the gum
 * does not cover. The seam between the two is filleted on the cast, so the line lies within 0.1 mm
 * of the mesh.
 */
final class MarginLine {
  private static final int POINTS = 144;
  private static final double STEP_MM = 0.25;

  private MarginLine() {}

  static List<Vec3> of(Tooth tooth, CastField field) {
    List<Vec3> line = new ArrayList<>(POINTS);
    double from = 0;
    for (int i = 0; i < POINTS; i++) {
      double angle = 2 * Math.PI * i / POINTS;
      double c = Math.cos(angle);
      double s = Math.sin(angle);
      // From the height of the last point down until covered, then up to the edge.
      double low = from;
      while (low > -Crown.ROOT_MM && !covered(tooth, field, c, s, low)) {
        low -= STEP_MM;
      }
      double high = low + STEP_MM;
      while (high < tooth.crown().size.length() && covered(tooth, field, c, s, high)) {
        low = high;
        high += STEP_MM;
      }
      for (int k = 0; k < 7; k++) {
        double middle = (low + high) / 2;
        if (covered(tooth, field, c, s, middle)) {
          low = middle;
        } else {
          high = middle;
        }
      }
      from = high;
      line.add(surface(tooth, c, s, high));
    }
    return line;
  }

  private static boolean covered(Tooth tooth, CastField field, double c, double s, double z) {
    Vec3 p = surface(tooth, c, s, z);
    return field.soft(p.x(), p.y(), p.z()) < 0;
  }

  /** The point of a tooth's surface at an angle about its axis and a height along it. */
  private static Vec3 surface(Tooth tooth, double c, double s, double z) {
    CrownSize size = tooth.crown().size;
    double in = 0.5;
    double out = 0.75 * Math.max(size.md(), size.bl());
    double valueIn = tooth.crown().at(in * c, in * s, z);
    double valueOut = tooth.crown().at(out * c, out * s, z);
    double r = in;
    for (int k = 0; k < 12; k++) {
      // False position with every other step halved, safe for any form.
      r = k % 2 == 0 ? in + (out - in) * valueIn / (valueIn - valueOut) : (in + out) / 2;
      double value = tooth.crown().at(r * c, r * s, z);
      if (Math.abs(value) < 1e-4) {
        break;
      }
      if (value < 0) {
        in = r;
        valueIn = value;
      } else {
        out = r;
        valueOut = value;
      }
    }
    return tooth.point(r * c, r * s, z);
  }
}
