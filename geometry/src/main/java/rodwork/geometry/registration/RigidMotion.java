package rodwork.geometry.registration;

import rodwork.geometry.Vec3;

/**
 * A turn followed by a shift: {@code x' = R·x + shift}; never mirrored.
 *
 * @param rowX first row of R
 * @param rowY second row of R
 * @param rowZ third row of R
 * @param shift [mm]
 */
public record RigidMotion(Vec3 rowX, Vec3 rowY, Vec3 rowZ, Vec3 shift) {
  public static final RigidMotion NONE = new RigidMotion(Vec3.X, Vec3.Y, Vec3.Z, Vec3.ZERO);

  /** How far the rows may be from a right-handed orthonormal set; rounding stays below 1e-12. */
  private static final double ROUNDING = 1e-9;

  public RigidMotion {
    if (!(Math.abs(rowX.length() - 1) < ROUNDING)
        || !(Math.abs(rowY.length() - 1) < ROUNDING)
        || !(rowX.cross(rowY).distance(rowZ) < ROUNDING)
        || !shift.isFinite()) {
      throw new IllegalArgumentException(
          "the rows of a turn are perpendicular unit vectors, right-handed: " + rowX + rowY + rowZ);
    }
  }

  /**
   * A turn about an axis through the origin, right-handed.
   *
   * @param axis of any length but 0
   * @param angleRad [radians]
   */
  public static RigidMotion turn(Vec3 axis, double angleRad) {
    Vec3 half = axis.unit().times(Math.sin(angleRad / 2));
    return ofQuaternion(Math.cos(angleRad / 2), half.x(), half.y(), half.z(), Vec3.ZERO);
  }

  /** The turn of a quaternion of any length but 0, then a shift [mm]. */
  static RigidMotion ofQuaternion(double w, double x, double y, double z, Vec3 shift) {
    double n = 1 / Math.sqrt(w * w + x * x + y * y + z * z);
    double a = w * n;
    double b = x * n;
    double c = y * n;
    double d = z * n;
    return new RigidMotion(
        new Vec3(1 - 2 * (c * c + d * d), 2 * (b * c - a * d), 2 * (b * d + a * c)),
        new Vec3(2 * (b * c + a * d), 1 - 2 * (b * b + d * d), 2 * (c * d - a * b)),
        new Vec3(2 * (b * d - a * c), 2 * (c * d + a * b), 1 - 2 * (b * b + c * c)),
        shift);
  }

  public static RigidMotion shift(Vec3 shift) {
    return new RigidMotion(Vec3.X, Vec3.Y, Vec3.Z, shift);
  }

  /** Where a point goes [mm]. */
  public Vec3 point(Vec3 p) {
    return direction(p).plus(shift);
  }

  /** Where a direction turns to. */
  public Vec3 direction(Vec3 d) {
    return new Vec3(rowX.dot(d), rowY.dot(d), rowZ.dot(d));
  }

  public RigidMotion inverse() {
    Vec3 x = new Vec3(rowX.x(), rowY.x(), rowZ.x());
    Vec3 y = new Vec3(rowX.y(), rowY.y(), rowZ.y());
    Vec3 z = new Vec3(rowX.z(), rowY.z(), rowZ.z());
    return new RigidMotion(x, y, z, new Vec3(-x.dot(shift), -y.dot(shift), -z.dot(shift)));
  }

  /** The motion that makes {@code first} and then this one. */
  public RigidMotion after(RigidMotion first) {
    Vec3 x = first.inverse().direction(rowX);
    Vec3 y = first.inverse().direction(rowY).across(x);
    Vec3 ux = x.unit();
    Vec3 uy = y.across(ux).unit();
    return new RigidMotion(ux, uy, ux.cross(uy), point(first.shift));
  }

  /** How far it turns [degrees, 0 to 180]. */
  public double angleDeg() {
    double cos = (rowX.x() + rowY.y() + rowZ.z() - 1) / 2;
    Vec3 twice = new Vec3(rowZ.y() - rowY.z(), rowX.z() - rowZ.x(), rowY.x() - rowX.y()).times(0.5);
    return Math.toDegrees(Math.atan2(twice.length(), cos));
  }
}
