package rodwork.design.arm;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.mesh.VertexNormals;

/**
 * A scanned tooth as a tip meets it: distances to its triangles, normals averaged at the vertices
 * and interpolated between them.
 */
public final class MeshSurface implements ToothSurface {
  private final TriangleTree tree;
  private final VertexNormals normals;

  public MeshSurface(TriangleTree tree, VertexNormals normals) {
    this.tree = tree;
    this.normals = normals;
  }

  @Override
  public double distance(Vec3 point) {
    SurfacePoint nearest = nearest(point);
    Vec3 way = point.minus(nearest.point());
    return Math.copySign(way.length(), way.dot(normalAt(nearest)));
  }

  @Override
  public Vec3 normal(Vec3 point) {
    return normalAt(nearest(point));
  }

  private SurfacePoint nearest(Vec3 point) {
    return tree.closest(point).orElseThrow(() -> new IllegalArgumentException("an empty mesh"));
  }

  private Vec3 normalAt(SurfacePoint q) {
    TriangleMesh mesh = tree.mesh();
    int t = q.triangle();
    Vec3 flat = mesh.doubleAreaNormal(t);
    double area = flat.length();
    if (!(area > 0)) {
      return normals.normal(mesh.corner(t, 0)).unit();
    }
    Vec3 sum = Vec3.ZERO;
    for (int k = 0; k < 3; k++) {
      Vec3 b = mesh.vertex(mesh.corner(t, (k + 1) % 3)).minus(q.point());
      Vec3 c = mesh.vertex(mesh.corner(t, (k + 2) % 3)).minus(q.point());
      double share = b.cross(c).dot(flat) / (area * area);
      sum = sum.plus(normals.normal(mesh.corner(t, k)).times(share));
    }
    return sum.length() > 0 ? sum.unit() : flat.unit();
  }
}
