package rodwork.geometry.mesh;

import rodwork.geometry.Vec3;

/**
 * A ray and its first hit so far; mutable, because it lives in the innermost loop of a query.
 *
 * <p>The triangle test is the watertight one of Woop, Benthin and Wald ("Watertight ray/triangle
 * intersection", Journal of Computer Graphics Techniques 2(1), 2013, 65–82), in 64 bits and without
 * their back-face test: a ray through a shared edge or vertex hits one of its triangles at least.
 */
final class Ray {
  double distance;
  int triangle = -1;
  private final double ox;
  private final double oy;
  private final double oz;
  private final double inverseX;
  private final double inverseY;
  private final double inverseZ;

  // The axis along which the direction is longest, and the other two in right-handed order.
  private final int kx;
  private final int ky;
  private final int kz;
  private final double sx;
  private final double sy;
  private final double sz;
  private final double[] origin;

  Ray(Vec3 origin, Vec3 direction, double reach) {
    ox = origin.x();
    oy = origin.y();
    oz = origin.z();
    this.origin = new double[] {ox, oy, oz};
    double[] d = {direction.x(), direction.y(), direction.z()};
    inverseX = 1 / d[0];
    inverseY = 1 / d[1];
    inverseZ = 1 / d[2];
    distance = Math.min(reach, Double.MAX_VALUE); // less than the entry of a box that is missed
    double ax = Math.abs(d[0]);
    double ay = Math.abs(d[1]);
    double az = Math.abs(d[2]);
    kz = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
    if (!(Math.abs(d[kz]) > 0) || !direction.isFinite() || !origin.isFinite()) {
      throw new IllegalArgumentException("no ray from " + origin + " along " + direction);
    }
    boolean forward = d[kz] > 0;
    kx = (kz + (forward ? 1 : 2)) % 3;
    ky = (kz + (forward ? 2 : 1)) % 3;
    sx = d[kx] / d[kz];
    sy = d[ky] / d[kz];
    sz = 1 / d[kz];
  }

  /** Where the ray enters a box, 0 from inside; infinite where it misses it. */
  double entry(float[] box, int at) {
    double near = 0;
    double far = distance;
    double a = (box[at] - ox) * inverseX;
    double b = (box[at + 3] - ox) * inverseX;
    // Written so that 0 · ∞ (a ray within a side of the box) counts as inside.
    near = Math.min(a, b) > near ? Math.min(a, b) : near;
    far = Math.max(a, b) < far ? Math.max(a, b) : far;
    a = (box[at + 1] - oy) * inverseY;
    b = (box[at + 4] - oy) * inverseY;
    near = Math.min(a, b) > near ? Math.min(a, b) : near;
    far = Math.max(a, b) < far ? Math.max(a, b) : far;
    a = (box[at + 2] - oz) * inverseZ;
    b = (box[at + 5] - oz) * inverseZ;
    near = Math.min(a, b) > near ? Math.min(a, b) : near;
    far = Math.max(a, b) < far ? Math.max(a, b) : far;
    // 3 roundings of 2⁻⁵³ a side; the factor is theirs, from Ize, JCGT 2(2), 2013.
    return near <= far * (1 + 4e-16) ? near : Double.POSITIVE_INFINITY;
  }

  void offer(double[] c, int at, int number) {
    double az = c[at + kz] - origin[kz];
    double bz = c[at + 3 + kz] - origin[kz];
    double cz = c[at + 6 + kz] - origin[kz];
    double ax = c[at + kx] - origin[kx] - sx * az;
    double ay = c[at + ky] - origin[ky] - sy * az;
    double bx = c[at + 3 + kx] - origin[kx] - sx * bz;
    double by = c[at + 3 + ky] - origin[ky] - sy * bz;
    double cx = c[at + 6 + kx] - origin[kx] - sx * cz;
    double cy = c[at + 6 + ky] - origin[ky] - sy * cz;
    double u = cx * by - cy * bx;
    double v = ax * cy - ay * cx;
    double w = bx * ay - by * ax;
    if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
      return;
    }
    double det = u + v + w;
    if (det == 0) {
      return;
    }
    double hit = sz * (u * az + v * bz + w * cz) / det;
    if (hit >= 0 && (hit < distance || (hit == distance && (triangle < 0 || number < triangle)))) {
      distance = hit;
      triangle = number;
    }
  }
}
