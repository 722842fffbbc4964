package rodwork.geometry.mesh;

import rodwork.geometry.Vec3;

/**
 * Principal curvatures at every vertex [1/mm], positive where the surface bulges outward: 1/r all
 * over a sphere.
 *
 * <p>On each triangle the change of the vertex normals along its sides gives a second fundamental
 * form by least squares; those about a vertex are averaged by area (Rusinkiewicz, "Estimating
 * curvatures and their derivatives on triangle meshes", 3DPVT 2004, section 3; here the forms are
 * added as tensors in space and projected on the vertex's tangent plane instead of being turned
 * into it, which takes off the squared cosine of the angle between triangle and vertex). So the
 * result is as smooth as the normals are: with averaged ones noise hardly shows, and forms smaller
 * than their scale do not either.
 *
 * <p>Between a curved surface and the chord of an edge of length e lies at most e² · curvature / 8.
 */
public final class Curvature {
  private final double[] greatest;
  private final double[] least;

  private Curvature(double[] greatest, double[] least) {
    this.greatest = greatest;
    this.least = least;
  }

  /**
   * Measures a mesh.
   *
   * @param normals those of the same mesh
   */
  public static Curvature of(TriangleMesh mesh, VertexNormals normals) {
    if (normals.count() != mesh.vertexCount()) {
      throw new IllegalArgumentException(
          normals.count() + " normals for " + mesh.vertexCount() + " vertices");
    }
    int vertices = mesh.vertexCount();
    double[] sums = new double[6 * vertices]; // xx, xy, xz, yy, yz, zz
    double[] areas = new double[vertices];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      addTriangle(mesh, normals, t, sums, areas);
    }
    double[] greatest = new double[vertices];
    double[] least = new double[vertices];
    for (int v = 0; v < vertices; v++) {
      Vec3 n = normals.normal(v);
      if (areas[v] > 0 && n.dot(n) > 0) {
        Vec3 u = n.anyPerpendicular();
        Vec3 w = n.cross(u);
        double uu = form(sums, 6 * v, u, u) / areas[v];
        double uw = form(sums, 6 * v, u, w) / areas[v];
        double ww = form(sums, 6 * v, w, w) / areas[v];
        double mean = (uu + ww) / 2;
        double spread = Math.hypot((uu - ww) / 2, uw);
        greatest[v] = mean + spread;
        least[v] = mean - spread;
      }
    }
    return new Curvature(greatest, least);
  }

  /** The greater principal curvature at a vertex [1/mm]; 0 where it has no normal. */
  public double greatest(int vertex) {
    return greatest[vertex];
  }

  /** The lesser principal curvature at a vertex, hollows negative [1/mm]. */
  public double least(int vertex) {
    return least[vertex];
  }

  /** Mean of the two [1/mm]. */
  public double mean(int vertex) {
    return (greatest[vertex] + least[vertex]) / 2;
  }

  /** The principal curvature that is farther from 0, without sign [1/mm]. */
  public double strongest(int vertex) {
    return Math.max(Math.abs(greatest[vertex]), Math.abs(least[vertex]));
  }

  private static double form(double[] m, int at, Vec3 a, Vec3 b) {
    double x = m[at] * b.x() + m[at + 1] * b.y() + m[at + 2] * b.z();
    double y = m[at + 1] * b.x() + m[at + 3] * b.y() + m[at + 4] * b.z();
    double z = m[at + 2] * b.x() + m[at + 4] * b.y() + m[at + 5] * b.z();
    return a.x() * x + a.y() * y + a.z() * z;
  }

  private static void addTriangle(
      TriangleMesh mesh, VertexNormals normals, int t, double[] sums, double[] areas) {
    Vec3 normal = mesh.doubleAreaNormal(t);
    double twice = normal.length();
    if (!(twice > 0)) {
      return;
    }
    Vec3 side = mesh.vertex(mesh.corner(t, 1)).minus(mesh.vertex(mesh.corner(t, 0)));
    Vec3 u = side.times(1 / side.length());
    Vec3 w = normal.times(1 / twice).cross(u);
    // Normal equations of [a b; b c] · (eu, ew) = (dnu, dnw) over the three sides e with the
    // changes of normal dn: six equations for three unknowns.
    double suu = 0;
    double suw = 0;
    double sww = 0;
    double ra = 0;
    double rb = 0;
    double rc = 0;
    for (int k = 0; k < 3; k++) {
      int from = mesh.corner(t, k);
      int to = mesh.corner(t, (k + 1) % 3);
      Vec3 e = mesh.vertex(to).minus(mesh.vertex(from));
      Vec3 dn = normals.normal(to).minus(normals.normal(from));
      double eu = e.dot(u);
      double ew = e.dot(w);
      double dnu = dn.dot(u);
      double dnw = dn.dot(w);
      suu += eu * eu;
      suw += eu * ew;
      sww += ew * ew;
      ra += eu * dnu;
      rb += ew * dnu + eu * dnw;
      rc += ew * dnw;
    }
    // | suu  suw      0   | |a|   |ra|
    // | suw  suu+sww  suw | |b| = |rb|
    // | 0    suw      sww | |c|   |rc|
    double middle = suu + sww - suw * suw * (1 / suu + 1 / sww);
    double b = (rb - suw * (ra / suu + rc / sww)) / middle;
    double a = (ra - suw * b) / suu;
    double c = (rc - suw * b) / sww;
    if (!Double.isFinite(a + b + c)) {
      return; // a sliver too thin to tell
    }
    double[] tensor = {
      a * u.x() * u.x() + 2 * b * u.x() * w.x() + c * w.x() * w.x(),
      a * u.x() * u.y() + b * (u.x() * w.y() + u.y() * w.x()) + c * w.x() * w.y(),
      a * u.x() * u.z() + b * (u.x() * w.z() + u.z() * w.x()) + c * w.x() * w.z(),
      a * u.y() * u.y() + 2 * b * u.y() * w.y() + c * w.y() * w.y(),
      a * u.y() * u.z() + b * (u.y() * w.z() + u.z() * w.y()) + c * w.y() * w.z(),
      a * u.z() * u.z() + 2 * b * u.z() * w.z() + c * w.z() * w.z()
    };
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(t, k);
      areas[v] += twice;
      for (int i = 0; i < 6; i++) {
        sums[6 * v + i] += twice * tensor[i];
      }
    }
  }
}
