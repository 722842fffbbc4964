package rodwork.design.arm;

import rodwork.geometry.Vec3;

/**
 * Symmetric 3×3 matrix that turns a force at the tip into its displacement.
 *
 * @param xx row x, column x; likewise the others [mm/N, or per MPa of modulus mm·MPa/N]
 */
public record Compliance(double xx, double yy, double zz, double xy, double yz, double zx) {
  public static final Compliance NONE = new Compliance(0, 0, 0, 0, 0, 0);

  /** The displacement under a force. */
  public Vec3 times(Vec3 f) {
    return new Vec3(
        xx * f.x() + xy * f.y() + zx * f.z(),
        xy * f.x() + yy * f.y() + yz * f.z(),
        zx * f.x() + yz * f.y() + zz * f.z());
  }

  /** All entries times a factor. */
  public Compliance scaled(double s) {
    return new Compliance(s * xx, s * yy, s * zz, s * xy, s * yz, s * zx);
  }

  /** Displacement along a unit vector under a unit force along it. */
  public double along(Vec3 d) {
    return d.dot(times(d));
  }

  /** This plus {@code s·v·vᵀ}. */
  Compliance plus(Vec3 v, double s) {
    return new Compliance(
        xx + s * v.x() * v.x(),
        yy + s * v.y() * v.y(),
        zz + s * v.z() * v.z(),
        xy + s * v.x() * v.y(),
        yz + s * v.y() * v.z(),
        zx + s * v.z() * v.x());
  }
}
