package rodwork.survey;

import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/**
 * The angle between a path and the normal of the occlusal plane, as it is held against the limits
 * of tilt: the one place where a tilt that equals its limit is told from one that passes it.
 *
 * @param deg rounded to a millionth: tilts that were set come back from their axis no worse than a
 *     billionth, and nobody sets one finer [degrees]
 */
public record TotalTilt(double deg) {
  private static final double PARTS = 1e6;

  /**
   * Rounds.
   *
   * @throws IllegalArgumentException if it is negative or no number
   */
  public TotalTilt {
    if (!(deg >= 0)) {
      throw new IllegalArgumentException("a total tilt of " + deg + "°");
    }
    deg = Math.rint(deg * PARTS) / PARTS;
  }

  /** The total tilt of a path of placement. */
  public static TotalTilt of(Vec3 axis, ArchFrame frame) {
    return new TotalTilt(axis.angleDegTo(frame.z()));
  }

  public static TotalTilt of(Tilt tilt) {
    return new TotalTilt(tilt.totalDeg());
  }

  /** Whether it passes a limit [degrees]; one that equals it does not. */
  public boolean passes(Threshold limit) {
    return deg > limit.value();
  }

  /** As a reading, which {@link rodwork.rules.Limit.Most} judges as {@link #passes} does. */
  public Reading reading() {
    return Reading.degrees(deg, 0);
  }
}
