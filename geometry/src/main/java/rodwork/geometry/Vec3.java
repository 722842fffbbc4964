package rodwork.geometry;

/**
 * A point or a direction in three dimensions.
 *
 * <p>Points are in mm, directions without unit. Which frame the values refer to (scan frame, arch
 * frame) is said where the vector is used; nothing here changes frames by itself.
 *
 * @param x first coordinate
 * @param y second coordinate
 * @param z third coordinate
 */
public record Vec3(double x, double y, double z) {
  public static final Vec3 ZERO = new Vec3(0, 0, 0);
  public static final Vec3 X = new Vec3(1, 0, 0);
  public static final Vec3 Y = new Vec3(0, 1, 0);
  public static final Vec3 Z = new Vec3(0, 0, 1);

  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  public Vec3 times(double s) {
    return new Vec3(s * x, s * y, s * z);
  }

  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double length() {
    return Math.sqrt(dot(this));
  }

  public double distance(Vec3 o) {
    return minus(o).length();
  }

  /**
   * This direction scaled to length 1.
   *
   * @throws IllegalArgumentException if the length is 0 or not finite
   */
  public Vec3 unit() {
    double length = length();
    if (!(length > 0) || Double.isInfinite(length)) {
      throw new IllegalArgumentException("no direction in a vector of length " + length);
    }
    return times(1 / length);
  }

  /** The part of this vector that is perpendicular to the unit vector {@code axis}. */
  public Vec3 across(Vec3 axis) {
    return minus(axis.times(dot(axis)));
  }

  /** Any unit vector perpendicular to this one; the same one for the same input. */
  public Vec3 anyPerpendicular() {
    Vec3 helper = Math.abs(x) < 0.9 * length() ? X : Y;
    return cross(helper).unit();
  }

  /** Angle to another direction [degrees, 0 to 180]; well conditioned near 0 and 180. */
  public double angleDegTo(Vec3 o) {
    return Math.toDegrees(Math.atan2(cross(o).length(), dot(o)));
  }

  public boolean isFinite() {
    return Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(z);
  }
}
