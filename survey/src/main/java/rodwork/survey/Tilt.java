package rodwork.survey;

import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;

/**
 * How the cast is set under the upright rod, as two angles against the reference orientation.
 *
 * <p>With σ = +1 for an upper and −1 for a lower cast, the withdrawal axis in the arch frame is
 * {@code p ∝ (σ·tan right, −tan anterior, 1)}.
 *
 * @param anteriorDeg anterior tilt [degrees]; positive: the front of the cast goes down
 * @param rightDeg right tilt [degrees]; positive: the patient's right side goes down
 */
public record Tilt(double anteriorDeg, double rightDeg) {
  public static final Tilt REFERENCE = new Tilt(0, 0);

  public Tilt {
    if (!(Math.abs(anteriorDeg) < 90) || !(Math.abs(rightDeg) < 90)) {
      throw new IllegalArgumentException(
          "a tilt lies within 90° each way: " + anteriorDeg + ", " + rightDeg);
    }
  }

  /**
   * The withdrawal axis in the scan frame [unit vector, from tissue to the occlusal side].
   *
   * @throws IllegalArgumentException if the right tilt is not 0 and the jaw is not known
   */
  public Vec3 axis(ArchFrame frame) {
    double sigma = sigma(frame, rightDeg != 0);
    double x = sigma * Math.tan(Math.toRadians(rightDeg));
    double y = -Math.tan(Math.toRadians(anteriorDeg));
    return frame.toScan(new Vec3(x, y, 1)).unit();
  }

  /**
   * The tilt at which a withdrawal axis stands upright; the inverse of {@link #axis}.
   *
   * @param axis direction in the scan frame, on the occlusal side of the occlusal plane
   * @throws IllegalArgumentException if it is not, or the jaw is needed and not known
   */
  public static Tilt of(Vec3 axis, ArchFrame frame) {
    Vec3 p = frame.toArch(axis);
    if (p.z() <= 0) {
      throw new IllegalArgumentException("the axis points away from the occlusal side");
    }
    double sigma = sigma(frame, Math.abs(p.x()) > 1e-12 * p.z());
    double right = Math.toDegrees(Math.atan2(sigma * p.x(), p.z()));
    double anterior = Math.toDegrees(Math.atan2(-p.y(), p.z()));
    return new Tilt(anterior + 0.0, right + 0.0);
  }

  /** Angle between the axis and the occlusal normal [degrees]. */
  public double totalDeg() {
    double x = Math.tan(Math.toRadians(rightDeg));
    double y = Math.tan(Math.toRadians(anteriorDeg));
    return Math.toDegrees(Math.atan(Math.hypot(x, y)));
  }

  private static double sigma(ArchFrame frame, boolean needed) {
    if (frame.jaw() == Jaw.UNKNOWN && needed) {
      throw new IllegalArgumentException("right and left are known only when the jaw is");
    }
    return frame.jaw() == Jaw.LOWER ? -1 : 1;
  }
}
