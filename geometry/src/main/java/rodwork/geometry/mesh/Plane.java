package rodwork.geometry.mesh;

import rodwork.geometry.Vec3;

/**
 * The plane of the points x with normal · x = offset.
 *
 * @param normal unit vector
 * @param offset distance of the plane from the origin along the normal [mm]
 */
public record Plane(Vec3 normal, double offset) {
  public Plane {
    if (!(Math.abs(normal.length() - 1) < 1e-9) || !Double.isFinite(offset)) {
      throw new IllegalArgumentException("no plane: normal " + normal + ", offset " + offset);
    }
  }

  /** The plane through a point across a direction of any length. */
  public static Plane through(Vec3 point, Vec3 direction) {
    Vec3 normal = direction.unit();
    return new Plane(normal, normal.dot(point));
  }

  /** Signed distance of a point, positive on the side of the normal [mm]. */
  public double distance(Vec3 point) {
    return normal.dot(point) - offset;
  }
}
