package rodwork.demo;

import java.util.ArrayList;
import java.util.List;

/** The plaster base: a prism with straight-cut sides and a flat bottom, open upwards. */
final class Base {
  /** Outward normal (x, y) and offset of each cut side. */
  private final double[] sides;

  private final double bottomZ;

  private Base(double[] sides, double bottomZ) {
    this.sides = sides;
    this.bottomZ = bottomZ;
  }

  /**
   * The base whose sides clear the land of the gum.
   *
   * @param anglesDeg directions of the cut sides, from +X towards +Y [degrees], the back left out
   * @param backY where the back is cut [mm]
   * @param bottomZ height of the bottom [mm]
   */
  static Base about(Gum gum, double[] anglesDeg, double backY, double bottomZ) {
    List<Double> sides = new ArrayList<>();
    for (double angle : anglesDeg) {
      double nx = Math.cos(Math.toRadians(angle));
      double ny = Math.sin(Math.toRadians(angle));
      double most = -1e9;
      for (double s = -70; s <= 70; s += 0.5) {
        var p = gum.landPoint(s);
        if (p.y() > backY) {
          most = Math.max(most, p.x() * nx + p.y() * ny);
        }
      }
      sides.addAll(List.of(nx, ny, most));
    }
    sides.addAll(List.of(0.0, -1.0, -backY));
    return new Base(sides.stream().mapToDouble(Double::doubleValue).toArray(), bottomZ);
  }

  double bottomZ() {
    return bottomZ;
  }

  /** Negative inside the prism [mm]. */
  double at(double x, double y, double z) {
    double most = bottomZ - z;
    for (int i = 0; i < sides.length; i += 3) {
      most = Math.max(most, x * sides[i] + y * sides[i + 1] - sides[i + 2]);
    }
    return most;
  }
}
