package rodwork.geometry.mesh;

import java.util.Arrays;
import rodwork.geometry.Watch;

/**
 * A mesh of fewer triangles that follows the same surface, for work that asks a cast a thousand
 * times.
 *
 * <p>Edges are collapsed in rising order of the error that this makes, in passes with a growing
 * limit, until the error asked for. The error of a vertex is the root of its quadric: the mean
 * distance to the planes of the triangles that went into it, weighted by their area. Garland and
 * Heckbert, "Surface simplification using quadric error metrics", SIGGRAPH 1997; ours: passes in
 * place of a queue, which is five times quicker and costs about a tenth more triangles.
 *
 * <p>Borders stay where they are within the same error. No triangle turns over by more than 75°. A
 * manifold mesh stays one.
 */
public final class Thinning {
  private static final int MOST_PASSES = 60;
  private static final double MOST_TURN_COS = Math.cos(Math.toRadians(75));
  private static final int Q = 10;

  /** A new place lies off the planes of the triangles it moves by at most this many errors. */
  private static final double MOST_OFF = 3;

  /** How much a border's own plane counts against the triangles' planes. */
  private static final double BORDER_WEIGHT = 4;

  private final double[] xyz;
  private final int[] corners;

  private final boolean[] gone;
  private final boolean[] touched;
  private final double[] quadric;
  private final boolean[] border;

  /** Error of each side of a triangle [mm²], stride 4; the fourth is the least of the three. */
  private final double[] error;

  private int triangles;
  private int[] first = new int[0];
  private int[] count = new int[0];
  private int[] refTriangle = new int[0];
  private int refs;

  private final double[] spot = new double[3];

  private Thinning(TriangleMesh mesh) {
    xyz = mesh.copyOfCoordinates();
    corners = mesh.copyOfCorners();
    triangles = mesh.triangleCount();
    gone = new boolean[triangles];
    touched = new boolean[triangles];
    quadric = new double[Q * mesh.vertexCount()];
    border = new boolean[mesh.vertexCount()];
    error = new double[4 * triangles];
  }

  /**
   * Thins a mesh.
   *
   * @param errorMm how far a collapse may carry the surface from the planes it stands for [mm]
   * @param watch stops the work
   */
  public static TriangleMesh of(TriangleMesh mesh, double errorMm, Watch watch) {
    if (!(errorMm > 0)) {
      throw new IllegalArgumentException("an error above 0 mm is needed, not " + errorMm);
    }
    Thinning thinning = new Thinning(mesh);
    thinning.run(errorMm * errorMm, watch);
    return thinning.mesh();
  }

  private void run(double most, Watch watch) {
    index();
    findBorders();
    for (int t = 0; t < triangles; t++) {
      addPlane(t);
    }
    for (int t = 0; t < triangles; t++) {
      updateErrors(t);
    }
    double limit = most / 4096;
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      watch.check();
      boolean last = limit >= most;
      int before = triangles;
      int dropped = pass(Math.min(limit, most));
      compact();
      index();
      if (last && dropped < before / 100) {
        return;
      }
      limit *= 2;
    }
  }

  private int pass(double limit) {
    Arrays.fill(touched, 0, triangles, false);
    int dropped = 0;
    for (int t = 0; t < triangles; t++) {
      if (gone[t] || touched[t] || error[4 * t + 3] > limit) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        if (error[4 * t + k] > limit) {
          continue;
        }
        int a = corners[3 * t + k];
        int b = corners[3 * t + (k == 2 ? 0 : k + 1)];
        if (border[a] != border[b]) {
          continue;
        }
        errorOf(a, b);
        double x = spot[0];
        double y = spot[1];
        double z = spot[2];
        double reach = MOST_OFF * Math.sqrt(limit);
        if (turns(x, y, z, a, b, reach) || turns(x, y, z, b, a, reach) || pinches(a, b)) {
          continue;
        }
        xyz[3 * a] = x;
        xyz[3 * a + 1] = y;
        xyz[3 * a + 2] = z;
        for (int i = 0; i < Q; i++) {
          quadric[Q * a + i] += quadric[Q * b + i];
        }
        int start = refs;
        dropped += gather(a, a, b);
        dropped += gather(a, b, a);
        first[a] = start;
        count[a] = refs - start;
        break;
      }
    }
    return dropped;
  }

  /** Hands the triangles about {@code v} to {@code a}; those with both ends of the edge go. */
  private int gather(int a, int v, int other) {
    int dropped = 0;
    for (int i = 0, n = count[v]; i < n; i++) {
      int t = refTriangle[first[v] + i];
      if (gone[t]) {
        continue;
      }
      int k = cornerOf(t, v);
      if (cornerOf(t, other) >= 0) {
        gone[t] = true;
        dropped++;
        continue;
      }
      corners[3 * t + k] = a;
      touched[t] = true;
      updateErrors(t);
      if (refs == refTriangle.length) {
        refTriangle = Arrays.copyOf(refTriangle, refs + refs / 2 + 16);
      }
      refTriangle[refs++] = t;
    }
    return dropped;
  }

  private int cornerOf(int t, int v) {
    return corners[3 * t] == v ? 0 : corners[3 * t + 1] == v ? 1 : corners[3 * t + 2] == v ? 2 : -1;
  }

  /**
   * Whether more vertices are joined to both ends than the edge has triangles: then the surface
   * would be pinched together there.
   */
  private boolean pinches(int a, int b) {
    int shared = 0;
    int wings = 0;
    int[] near = new int[2 * count[a]];
    int n = 0;
    for (int i = 0; i < count[a]; i++) {
      int t = refTriangle[first[a] + i];
      if (!gone[t]) {
        wings += cornerOf(t, b) >= 0 ? 1 : 0;
        for (int k = 0; k < 3; k++) {
          int v = corners[3 * t + k];
          if (v != a && v != b && !holds(near, n, v)) {
            near[n++] = v;
          }
        }
      }
    }
    int met = 0;
    int[] both = new int[n];
    for (int i = 0; i < count[b]; i++) {
      int t = refTriangle[first[b] + i];
      for (int k = 0; k < 3 && !gone[t]; k++) {
        int v = corners[3 * t + k];
        if (v != a && v != b && holds(near, n, v) && !holds(both, met, v)) {
          both[met++] = v;
          shared++;
        }
      }
    }
    return shared != wings;
  }

  private static boolean holds(int[] some, int n, int v) {
    for (int i = 0; i < n; i++) {
      if (some[i] == v) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a triangle about {@code v} turns over or folds up if v goes to the place, or the place
   * lies off its plane by more than {@code reach}.
   */
  private boolean turns(double x, double y, double z, int v, int other, double reach) {
    for (int i = 0; i < count[v]; i++) {
      int t = refTriangle[first[v] + i];
      if (gone[t]) {
        continue;
      }
      int k = cornerOf(t, v);
      int p = corners[3 * t + (k + 1) % 3];
      int q = corners[3 * t + (k + 2) % 3];
      if (p == other || q == other) {
        continue;
      }
      double ax = xyz[3 * p] - x;
      double ay = xyz[3 * p + 1] - y;
      double az = xyz[3 * p + 2] - z;
      double bx = xyz[3 * q] - x;
      double by = xyz[3 * q + 1] - y;
      double bz = xyz[3 * q + 2] - z;
      double nx = ay * bz - az * by;
      double ny = az * bx - ax * bz;
      double nz = ax * by - ay * bx;
      double n = Math.sqrt(nx * nx + ny * ny + nz * nz);
      double la = Math.sqrt(ax * ax + ay * ay + az * az);
      double lb = Math.sqrt(bx * bx + by * by + bz * bz);
      if (n < 0.03 * la * lb) {
        return true;
      }
      double ox = xyz[3 * v];
      double oy = xyz[3 * v + 1];
      double oz = xyz[3 * v + 2];
      double cx = xyz[3 * p] - ox;
      double cy = xyz[3 * p + 1] - oy;
      double cz = xyz[3 * p + 2] - oz;
      double dx = xyz[3 * q] - ox;
      double dy = xyz[3 * q + 1] - oy;
      double dz = xyz[3 * q + 2] - oz;
      double mx = cy * dz - cz * dy;
      double my = cz * dx - cx * dz;
      double mz = cx * dy - cy * dx;
      double m = Math.sqrt(mx * mx + my * my + mz * mz);
      if (nx * mx + ny * my + nz * mz < MOST_TURN_COS * n * m
          || Math.abs((x - ox) * mx + (y - oy) * my + (z - oz) * mz) > reach * m) {
        return true;
      }
    }
    return false;
  }

  private void updateErrors(int t) {
    int o = 4 * t;
    for (int k = 0; k < 3; k++) {
      error[o + k] = errorOf(corners[3 * t + k], corners[3 * t + (k == 2 ? 0 : k + 1)]);
    }
    error[o + 3] = Math.min(error[o], Math.min(error[o + 1], error[o + 2]));
  }

  private void addPlane(int t) {
    int a = 3 * corners[3 * t];
    int b = 3 * corners[3 * t + 1];
    int c = 3 * corners[3 * t + 2];
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double uz = xyz[b + 2] - xyz[a + 2];
    double vx = xyz[c] - xyz[a];
    double vy = xyz[c + 1] - xyz[a + 1];
    double vz = xyz[c + 2] - xyz[a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double n = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(n > 0)) {
      return;
    }
    nx /= n;
    ny /= n;
    nz /= n;
    for (int k = 0; k < 3; k++) {
      addPlane(corners[3 * t + k], a, nx, ny, nz, n);
    }
    for (int k = 0; k < 3; k++) {
      int from = corners[3 * t + k];
      int to = corners[3 * t + (k + 1) % 3];
      if (border[from] && border[to]) {
        addWall(from, to, nx, ny, nz);
      }
    }
  }

  /** An upright plane through the side of a triangle, so that borders do not creep. */
  private void addWall(int from, int to, double nx, double ny, double nz) {
    double ex = xyz[3 * to] - xyz[3 * from];
    double ey = xyz[3 * to + 1] - xyz[3 * from + 1];
    double ez = xyz[3 * to + 2] - xyz[3 * from + 2];
    double wx = ey * nz - ez * ny;
    double wy = ez * nx - ex * nz;
    double wz = ex * ny - ey * nx;
    double w = Math.sqrt(wx * wx + wy * wy + wz * wz);
    if (w > 0) {
      for (int v : new int[] {from, to}) {
        addPlane(v, 3 * from, wx / w, wy / w, wz / w, BORDER_WEIGHT * w * w);
      }
    }
  }

  private void addPlane(int v, int through, double nx, double ny, double nz, double weight) {
    double d = -(nx * xyz[through] + ny * xyz[through + 1] + nz * xyz[through + 2]);
    int o = Q * v;
    quadric[o] += weight * nx * nx;
    quadric[o + 1] += weight * nx * ny;
    quadric[o + 2] += weight * nx * nz;
    quadric[o + 3] += weight * nx * d;
    quadric[o + 4] += weight * ny * ny;
    quadric[o + 5] += weight * ny * nz;
    quadric[o + 6] += weight * ny * d;
    quadric[o + 7] += weight * nz * nz;
    quadric[o + 8] += weight * nz * d;
    quadric[o + 9] += weight * d * d;
  }

  /** Mean squared distance [mm²] where the edge's ends become one; the place is left in spot. */
  private double errorOf(int a, int b) {
    int i = Q * a;
    int j = Q * b;
    double[] q = quadric;
    double xx = q[i] + q[j];
    double xy = q[i + 1] + q[j + 1];
    double xz = q[i + 2] + q[j + 2];
    double xd = q[i + 3] + q[j + 3];
    double yy = q[i + 4] + q[j + 4];
    double yz = q[i + 5] + q[j + 5];
    double yd = q[i + 6] + q[j + 6];
    double zz = q[i + 7] + q[j + 7];
    double zd = q[i + 8] + q[j + 8];
    double dd = q[i + 9] + q[j + 9];
    double weight = xx + yy + zz;
    double mx = (xyz[3 * a] + xyz[3 * b]) / 2;
    double my = (xyz[3 * a + 1] + xyz[3 * b + 1]) / 2;
    double mz = (xyz[3 * a + 2] + xyz[3 * b + 2]) / 2;
    double x = mx;
    double y = my;
    double z = mz;
    if (weight > 0) {
      // A pull to the middle of the edge keeps the place steady where the surface is flat.
      double pull = 1e-3 * weight;
      double a0 = xx + pull;
      double d0 = yy + pull;
      double f0 = zz + pull;
      double rx = -xd + pull * mx;
      double ry = -yd + pull * my;
      double rz = -zd + pull * mz;
      double c00 = d0 * f0 - yz * yz;
      double c01 = xz * yz - xy * f0;
      double c02 = xy * yz - xz * d0;
      double det = a0 * c00 + xy * c01 + xz * c02;
      double c11 = a0 * f0 - xz * xz;
      double c12 = xy * xz - a0 * yz;
      double c22 = a0 * d0 - xy * xy;
      double px = (c00 * rx + c01 * ry + c02 * rz) / det;
      double py = (c01 * rx + c11 * ry + c12 * rz) / det;
      double pz = (c02 * rx + c12 * ry + c22 * rz) / det;
      double ex = xyz[3 * a] - xyz[3 * b];
      double ey = xyz[3 * a + 1] - xyz[3 * b + 1];
      double ez = xyz[3 * a + 2] - xyz[3 * b + 2];
      double far = (px - mx) * (px - mx) + (py - my) * (py - my) + (pz - mz) * (pz - mz);
      if (far <= ex * ex + ey * ey + ez * ez) {
        x = px;
        y = py;
        z = pz;
      }
    }
    spot[0] = x;
    spot[1] = y;
    spot[2] = z;
    if (!(weight > 0)) {
      return 0;
    }
    double sum =
        xx * x * x
            + 2 * xy * x * y
            + 2 * xz * x * z
            + 2 * xd * x
            + yy * y * y
            + 2 * yz * y * z
            + 2 * yd * y
            + zz * z * z
            + 2 * zd * z
            + dd;
    return Math.max(sum, 0) / weight;
  }

  private void compact() {
    int kept = 0;
    for (int t = 0; t < triangles; t++) {
      if (!gone[t]) {
        System.arraycopy(corners, 3 * t, corners, 3 * kept, 3);
        System.arraycopy(error, 4 * t, error, 4 * kept, 4);
        kept++;
      }
    }
    Arrays.fill(gone, 0, triangles, false);
    triangles = kept;
  }

  /** The triangles about each vertex, anew. */
  private void index() {
    int n = xyz.length / 3;
    count = new int[n];
    for (int i = 0; i < 3 * triangles; i++) {
      count[corners[i]]++;
    }
    first = new int[n];
    int at = 0;
    for (int v = 0; v < n; v++) {
      first[v] = at;
      at += count[v];
      count[v] = 0;
    }
    if (refTriangle.length < 2 * at) {
      refTriangle = new int[2 * at + 16];
    }
    for (int i = 0; i < 3 * triangles; i++) {
      int v = corners[i];
      refTriangle[first[v] + count[v]++] = i / 3;
    }
    refs = at;
  }

  /** Vertices of an edge that only one triangle has. */
  private void findBorders() {
    int n = xyz.length / 3;
    int[] seen = new int[n];
    int[] times = new int[n];
    for (int v = 0; v < n; v++) {
      for (int i = 0; i < count[v]; i++) {
        int t = refTriangle[first[v] + i];
        for (int k = 0; k < 3; k++) {
          int w = corners[3 * t + k];
          if (seen[w] != v + 1) {
            seen[w] = v + 1;
            times[w] = 0;
          }
          times[w]++;
        }
      }
      for (int i = 0; i < count[v]; i++) {
        int t = refTriangle[first[v] + i];
        for (int k = 0; k < 3; k++) {
          int w = corners[3 * t + k];
          if (w != v && times[w] == 1) {
            border[v] = true;
            border[w] = true;
          }
        }
      }
    }
  }

  private TriangleMesh mesh() {
    int n = xyz.length / 3;
    int[] number = new int[n];
    Arrays.fill(number, -1);
    double[] out = new double[xyz.length];
    int vertices = 0;
    int[] c = new int[3 * triangles];
    for (int i = 0; i < c.length; i++) {
      int v = corners[i];
      if (number[v] < 0) {
        System.arraycopy(xyz, 3 * v, out, 3 * vertices, 3);
        number[v] = vertices++;
      }
      c[i] = number[v];
    }
    return TriangleMesh.of(Arrays.copyOf(out, 3 * vertices), c);
  }
}
