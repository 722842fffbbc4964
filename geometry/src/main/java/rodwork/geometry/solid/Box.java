package rodwork.geometry.solid;

import rodwork.geometry.Vec3;

/**
 * A box with sides along the axes [mm].
 *
 * @param min its lowest corner
 * @param max its highest corner
 */
public record Box(Vec3 min, Vec3 max) {
  public Box {
    if (!(min.x() <= max.x() && min.y() <= max.y() && min.z() <= max.z())) {
      throw new IllegalArgumentException("a box from " + min + " to " + max + " is turned round");
    }
  }

  /** The cube of half side {@code half} about a point. */
  public static Box about(Vec3 centre, double half) {
    Vec3 reach = new Vec3(half, half, half);
    return new Box(centre.minus(reach), centre.plus(reach));
  }

  /** Whether the two boxes share a point. */
  public boolean meets(Box o) {
    return min.x() <= o.max.x()
        && o.min.x() <= max.x()
        && min.y() <= o.max.y()
        && o.min.y() <= max.y()
        && min.z() <= o.max.z()
        && o.min.z() <= max.z();
  }

  /** Whether a point lies in the box, its faces included. */
  public boolean holds(double x, double y, double z) {
    return x >= min.x()
        && x <= max.x()
        && y >= min.y()
        && y <= max.y()
        && z >= min.z()
        && z <= max.z();
  }

  public Vec3 centre() {
    return min.plus(max).times(0.5);
  }

  /** Half the length of the diagonal [mm]. */
  public double radius() {
    return max.distance(min) / 2;
  }
}
