package rodwork.anatomy;

import rodwork.geometry.Vec3;
import rodwork.geometry.registration.RigidMotion;

/**
 * The frame of one arch, teeth up: +Z occlusal, +Y anterior, X = Y × Z.
 *
 * <p>So +X is the patient's left on an upper cast and the patient's right on a lower one. The
 * directions are known only within ± degrees, which are kept.
 *
 * @param origin a point near the middle of the arch, in the scan frame [mm]
 * @param y unit vector to the front, in the scan frame, perpendicular to z
 * @param z unit vector to the occlusal side, in the scan frame
 * @param jaw which arch it is
 * @param upUncertaintyDeg how well z is known [± degrees]
 * @param frontUncertaintyDeg how well y is known about z [± degrees]
 */
public record ArchFrame(
    Vec3 origin, Vec3 y, Vec3 z, Jaw jaw, double upUncertaintyDeg, double frontUncertaintyDeg) {

  public ArchFrame {
    if (Math.abs(y.length() - 1) > 1e-9
        || Math.abs(z.length() - 1) > 1e-9
        || Math.abs(y.dot(z)) > 1e-9) {
      throw new IllegalArgumentException("y and z must be perpendicular unit vectors: " + y + z);
    }
  }

  public Vec3 x() {
    return y.cross(z);
  }

  /** A direction of the arch frame, in the scan frame. */
  public Vec3 toScan(Vec3 direction) {
    return x().times(direction.x()).plus(y.times(direction.y())).plus(z.times(direction.z()));
  }

  /** A direction of the scan frame, in the arch frame. */
  public Vec3 toArch(Vec3 direction) {
    return new Vec3(x().dot(direction), y.dot(direction), z.dot(direction));
  }

  /** The frame carried over to another scan of the same arch, instead of found anew there. */
  public ArchFrame moved(RigidMotion motion) {
    Vec3 up = motion.direction(z).unit();
    Vec3 front = motion.direction(y).across(up).unit();
    return new ArchFrame(
        motion.point(origin), front, up, jaw, upUncertaintyDeg, frontUncertaintyDeg);
  }

  public ArchFrame withJaw(Jaw other) {
    return new ArchFrame(origin, y, z, other, upUncertaintyDeg, frontUncertaintyDeg);
  }
}
