package rodwork.geometry.mesh;

import rodwork.geometry.Vec3;

/**
 * The nearest point found so far; mutable, because it lives in the innermost loop of a query.
 *
 * <p>Which part of a triangle is nearest (a corner, a side, the face) is told by the regions of
 * Ericson, Real-Time Collision Detection, 2005, section 5.1.5.
 */
final class ClosestPoint {
  final double x;
  final double y;
  final double z;
  double squared;
  int triangle = -1;
  private double px;
  private double py;
  private double pz;

  ClosestPoint(double x, double y, double z, double squaredReach) {
    this.x = x;
    this.y = y;
    this.z = z;
    this.squared = squaredReach;
  }

  SurfacePoint surfacePoint() {
    return new SurfacePoint(triangle, new Vec3(px, py, pz), Math.sqrt(squared));
  }

  void offer(double[] c, int at, int number) {
    double ax = c[at];
    double ay = c[at + 1];
    double az = c[at + 2];
    double ux = c[at + 3] - ax;
    double uy = c[at + 4] - ay;
    double uz = c[at + 5] - az;
    double vx = c[at + 6] - ax;
    double vy = c[at + 7] - ay;
    double vz = c[at + 8] - az;
    double wx = x - ax;
    double wy = y - ay;
    double wz = z - az;
    double d1 = ux * wx + uy * wy + uz * wz;
    double d2 = vx * wx + vy * wy + vz * wz;
    double uu = ux * ux + uy * uy + uz * uz;
    double uv = ux * vx + uy * vy + uz * vz;
    double vv = vx * vx + vy * vy + vz * vz;
    double d3 = d1 - uu;
    double d4 = d2 - uv;
    double d5 = d1 - uv;
    double d6 = d2 - vv;
    double s; // the point is a + s u + t v
    double t;
    double vc = d1 * d4 - d3 * d2;
    double vb = d5 * d2 - d1 * d6;
    double va = d3 * d6 - d5 * d4;
    if (d1 <= 0 && d2 <= 0) {
      s = 0;
      t = 0;
    } else if (d3 >= 0 && d4 <= d3) {
      s = 1;
      t = 0;
    } else if (d6 >= 0 && d5 <= d6) {
      s = 0;
      t = 1;
    } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
      s = d1 / (d1 - d3);
      t = 0;
    } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
      s = 0;
      t = d2 / (d2 - d6);
    } else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
      t = (d4 - d3) / ((d4 - d3) + (d5 - d6));
      s = 1 - t;
    } else {
      double sum = 1 / (va + vb + vc);
      s = vb * sum;
      t = vc * sum;
    }
    double qx = ax + s * ux + t * vx;
    double qy = ay + s * uy + t * vy;
    double qz = az + s * uz + t * vz;
    double ex = qx - x;
    double ey = qy - y;
    double ez = qz - z;
    double distance = ex * ex + ey * ey + ez * ez;
    if (distance < squared || (distance == squared && (number < triangle || triangle < 0))) {
      squared = distance;
      triangle = number;
      px = qx;
      py = qy;
      pz = qz;
    }
  }
}
