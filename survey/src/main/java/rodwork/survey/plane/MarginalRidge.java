package rodwork.survey.plane;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * The marginal ridge on a section: where its wall turns into its top, told against the tooth's own
 * axis, so that a tooth that leans keeps its ridge.
 *
 * <p>The turn is where the outline faces half outward and half along the axis. The ridge is the
 * crest within {@link #CREST_MM} behind it from which the outline falls to a fossa by {@link
 * #FALL_MM}; where none is there (a worn top, the slope of a cusp, the edge of a front tooth), it
 * is the turn itself.
 *
 * <p>Tried and lost: the first crest against the occlusal direction of the arch. On a tooth that
 * leans towards the space by more than its fossa is steep there is none, and the crest found is a
 * cusp on the far side: 6.1 mm of enamel on the leaning molar of the demo, in place of 1.5 mm. A
 * crest up to 2.5 mm behind the turn: then it is a cusp's tip, and the plane starts on its slope.
 */
final class MarginalRidge {
  /** A crest is where the outline falls by this much behind it [mm]. */
  private static final double FALL_MM = 0.15;

  /** The crest of a marginal ridge lies within this of its turn [mm]. */
  private static final double CREST_MM = 1.2;

  /** The fall behind a crest is seen within this of the turn [mm]. */
  private static final double REACH_MM = 2.5;

  private MarginalRidge() {}

  /**
   * The point of the ridge.
   *
   * @param upward points from the wall up and over the top; not empty
   * @param outward away from the tooth [unit vector, perpendicular to the axis]
   * @param axis of the tooth, to occlusal [unit vector]
   * @return its index
   */
  static int of(List<Vec3> upward, Vec3 outward, Vec3 axis) {
    int turn = turn(upward, outward, axis);
    int crest = turn;
    for (int i = turn + 1; i < upward.size(); i++) {
      double from = behind(upward, turn, i - 1, outward);
      double to = behind(upward, turn, i, outward);
      boolean last = to >= REACH_MM;
      Vec3 way = upward.get(i).minus(upward.get(i - 1));
      Vec3 q = upward.get(i - 1).plus(way.times(last ? (REACH_MM - from) / (to - from) : 1));
      double rise = q.minus(upward.get(crest)).dot(axis);
      if (-rise > FALL_MM) {
        return behind(upward, turn, crest, outward) > CREST_MM ? turn : crest;
      }
      if (last) {
        return turn;
      }
      crest = rise > 0 ? i : crest;
    }
    return turn;
  }

  private static double behind(List<Vec3> upward, int turn, int i, Vec3 outward) {
    return upward.get(turn).minus(upward.get(i)).dot(outward);
  }

  private static int turn(List<Vec3> upward, Vec3 outward, Vec3 axis) {
    Vec3 half = outward.plus(axis);
    int turn = 0;
    for (int i = 1; i < upward.size(); i++) {
      if (upward.get(i).dot(half) > upward.get(turn).dot(half)) {
        turn = i;
      }
    }
    return turn;
  }

  /** How far behind its turn an outline is needed to find the ridge [mm]. */
  static double reachMm() {
    return REACH_MM;
  }
}
