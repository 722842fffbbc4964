package rodwork.design.arm;

import rodwork.geometry.Vec3;

/** Teeth of known shape, the path along z. */
final class Crowns {
  private Crowns() {}

  /** A cone that narrows downwards by the angle on each side. */
  record Cone(double radiusAtZero, double convergenceDeg) implements ToothSurface {
    @Override
    public double distance(Vec3 q) {
      double a = Math.toRadians(convergenceDeg);
      double radius = Math.hypot(q.x(), q.y());
      return (radius - radiusAtZero - q.z() * Math.tan(a)) * Math.cos(a);
    }

    @Override
    public Vec3 normal(Vec3 q) {
      double a = Math.toRadians(convergenceDeg);
      return q.across(Vec3.Z).unit().times(Math.cos(a)).minus(Vec3.Z.times(Math.sin(a)));
    }
  }

  /** A sphere about the origin. */
  record Sphere(double radius) implements ToothSurface {
    @Override
    public double distance(Vec3 q) {
      return q.length() - radius;
    }

    @Override
    public Vec3 normal(Vec3 q) {
      return q.unit();
    }
  }
}
