package rodwork.benchmarks;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * Axes to survey one after the other, as a hand on the tilt map would: never the same twice in a
 * row, so that nothing can be remembered from the survey before.
 */
final class Axes {
  private static final int COUNT = 24;
  private static final double FARTHEST_DEG = 10;
  private static final double GOLDEN_ANGLE_RAD = Math.PI * (3 - Math.sqrt(5));

  private final List<Vec3> axes = new ArrayList<>();
  private int next;

  /** Axes within {@value #FARTHEST_DEG}° of one, evenly spread over the tilt map. */
  Axes(Vec3 middle) {
    Vec3 z = middle.unit();
    Vec3 x = z.anyPerpendicular();
    Vec3 y = z.cross(x);
    for (int i = 0; i < COUNT; i++) {
      double away = Math.tan(Math.toRadians(FARTHEST_DEG * Math.sqrt((double) i / (COUNT - 1))));
      double turn = i * GOLDEN_ANGLE_RAD;
      Vec3 aside = x.times(away * Math.cos(turn)).plus(y.times(away * Math.sin(turn)));
      axes.add(z.plus(aside).unit());
    }
  }

  Vec3 next() {
    Vec3 axis = axes.get(next);
    next = (next + 1) % axes.size();
    return axis;
  }
}
