package rodwork.geometry.overhang;

import rodwork.geometry.Parallel;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;

/**
 * The vertices of a mesh in a frame whose third axis is the viewing axis.
 *
 * <p>{@code x, y} is the horizontal position and {@code z} the height of vertex i [mm]. The arrays
 * are bare because the loops of this package live on them; they are never changed once made and
 * never leave the package.
 */
final class Projection {
  final Vec3 e1;
  final Vec3 e2;
  final Vec3 axis;
  final double[] x;
  final double[] y;
  final double[] z;

  private Projection(Vec3 e1, Vec3 e2, Vec3 axis, double[] x, double[] y, double[] z) {
    this.e1 = e1;
    this.e2 = e2;
    this.axis = axis;
    this.x = x;
    this.y = y;
    this.z = z;
  }

  static Projection of(double[] xyz, Vec3 axis) {
    Vec3 p = axis.unit();
    Vec3 e1 = p.anyPerpendicular();
    Vec3 e2 = p.cross(e1);
    int n = xyz.length / 3;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] z = new double[n];
    Parallel.chunks(
        n,
        1 << 15,
        Watch.NONE,
        (from, to) -> {
          for (int v = from; v < to; v++) {
            double a = xyz[3 * v];
            double b = xyz[3 * v + 1];
            double c = xyz[3 * v + 2];
            x[v] = e1.x() * a + e1.y() * b + e1.z() * c;
            y[v] = e2.x() * a + e2.y() * b + e2.z() * c;
            z[v] = p.x() * a + p.y() * b + p.z() * c;
          }
        });
    return new Projection(e1, e2, p, x, y, z);
  }

  /** Frame coordinates of a point of the mesh's own frame. */
  Vec3 into(Vec3 point) {
    return new Vec3(e1.dot(point), e2.dot(point), axis.dot(point));
  }

  /** The point of the mesh's own frame with these frame coordinates. */
  Vec3 back(double px, double py, double pz) {
    return e1.times(px).plus(e2.times(py)).plus(axis.times(pz));
  }
}
