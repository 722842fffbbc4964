package rodwork.casework.export;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The frame in which a cast stands at its path: +Z along the withdrawal axis, +Y to the front, X =
 * Y × Z.
 *
 * @param origin its origin, in the scan frame [mm]
 * @param front +Y, unit vector in the scan frame, perpendicular to the axis
 * @param axis +Z, the withdrawal axis, unit vector in the scan frame
 */
public record PathFrame(Vec3 origin, Vec3 front, Vec3 axis) {
  public PathFrame {
    if (Math.abs(front.length() - 1) > 1e-9
        || Math.abs(axis.length() - 1) > 1e-9
        || Math.abs(front.dot(axis)) > 1e-9) {
      throw new IllegalArgumentException("front and axis are perpendicular unit vectors");
    }
  }

  /**
   * The frame of a path.
   *
   * @param front any direction to the front; its part across the axis counts
   */
  public static PathFrame of(Vec3 origin, Vec3 front, Vec3 axis) {
    Vec3 up = axis.unit();
    return new PathFrame(origin, front.across(up).unit(), up);
  }

  public Vec3 x() {
    return front.cross(axis);
  }

  /** A point of the scan, in the path frame [mm]. */
  public Vec3 point(Vec3 scan) {
    Vec3 from = scan.minus(origin);
    return new Vec3(x().dot(from), front.dot(from), axis.dot(from));
  }

  /** A point of the path frame, in the scan [mm]; undoes {@link #point}. */
  public Vec3 toScan(Vec3 p) {
    return origin.plus(x().times(p.x())).plus(front.times(p.y())).plus(axis.times(p.z()));
  }

  /** The same mesh in the path frame. */
  public TriangleMesh mesh(TriangleMesh scan) {
    double[] xyz = new double[3 * scan.vertexCount()];
    for (int v = 0; v < scan.vertexCount(); v++) {
      Vec3 p = point(scan.vertex(v));
      xyz[3 * v] = p.x();
      xyz[3 * v + 1] = p.y();
      xyz[3 * v + 2] = p.z();
    }
    return TriangleMesh.of(xyz, scan.copyOfCorners());
  }

  /**
   * The 4×4 matrix from scan to path, row by row, for column vectors: {@code path = M · (x, y, z,
   * 1)}.
   */
  public double[] rowMajor() {
    double[] m = new double[16];
    Vec3[] rows = {x(), front, axis};
    for (int i = 0; i < 3; i++) {
      m[4 * i] = rows[i].x();
      m[4 * i + 1] = rows[i].y();
      m[4 * i + 2] = rows[i].z();
      m[4 * i + 3] = -rows[i].dot(origin);
    }
    m[15] = 1;
    return m;
  }
}
