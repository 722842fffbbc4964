package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import rodwork.geometry.Vec3;

/** Arms of known shape. */
final class Arms {
  private Arms() {}

  /**
   * Straight along x, the tooth below it: outward is z. The line of centroids is level at z = 0.
   */
  static Arm straight(double lengthMm, Section root, Section tip) {
    return new Arm(
        List.of(
            new Arm.Station(new Vec3(0, 0, -root.centroidMm()), Vec3.Z),
            new Arm.Station(new Vec3(lengthMm, 0, -tip.centroidMm()), Vec3.Z)),
        root,
        tip);
  }

  /** A curve of the parameter from 0 to 1, outward away from the z axis. */
  static Arm round(int points, DoubleFunction<Vec3> curve, Section root, Section tip) {
    List<Arm.Station> line = new ArrayList<>();
    for (int i = 0; i <= points; i++) {
      Vec3 p = curve.apply((double) i / points);
      line.add(new Arm.Station(p, p.across(Vec3.Z).unit()));
    }
    return new Arm(line, root, tip);
  }

  /** A quarter circle in the xy plane from (R, 0) to (0, R), R the radius of the centroids. */
  static Arm quarterCircle(double radiusMm, Section section, int points) {
    double inner = radiusMm - section.centroidMm();
    return round(
        points,
        t -> new Vec3(Math.cos(t * Math.PI / 2), Math.sin(t * Math.PI / 2), 0).times(inner),
        section,
        section);
  }
}
