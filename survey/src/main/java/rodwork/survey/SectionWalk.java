package rodwork.survey;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A walk over the surface that stays in one plane, from edge to edge.
 *
 * <p>Corners that lie in the plane count as on its positive side, so that every triangle met has
 * one way in and one way out.
 */
public final class SectionWalk {
  private final MeshTopology topology;
  private final TriangleMesh mesh;
  private final Vec3 start;
  private final Vec3 normal;

  /** Called at each edge that the walk crosses. */
  @FunctionalInterface
  public interface Step {
    /**
     * Takes note of a crossing.
     *
     * @param point where [mm]
     * @param a first end of the edge
     * @param b second end
     * @param s share of the way from a to b
     * @param triangle the triangle just crossed
     * @param lengthMm way walked so far along the section
     * @return whether to walk on
     */
    boolean at(Vec3 point, int a, int b, double s, int triangle, double lengthMm);
  }

  /**
   * @param start a point of the surface
   * @param normal unit normal of the plane
   */
  public SectionWalk(MeshTopology topology, Vec3 start, Vec3 normal) {
    this.topology = topology;
    this.mesh = topology.mesh();
    this.start = start;
    this.normal = normal;
  }

  /**
   * Walks until a step says stop, the surface ends, or the walk closes.
   *
   * @param triangle the triangle that holds the start
   * @param towards the direction in which to set out; its part in the triangle counts
   */
  public void walk(int triangle, Vec3 towards, Step step) {
    int first = -1;
    double best = 0;
    for (int k = 0; k < 3; k++) {
      if (crosses(triangle, k)) {
        double ahead = crossing(triangle, k).minus(start).dot(towards);
        if (first < 0 || ahead > best) {
          best = ahead;
          first = k;
        }
      }
    }
    if (first < 0) {
      return;
    }
    int t = triangle;
    int k = first;
    Vec3 last = start;
    double length = 0;
    int most = mesh.triangleCount();
    for (int i = 0; i < most; i++) {
      int a = mesh.corner(t, k);
      int b = mesh.corner(t, k == 2 ? 0 : k + 1);
      Vec3 q = crossing(t, k);
      length += q.distance(last);
      last = q;
      if (!step.at(q, a, b, share(a, b), t, length)) {
        return;
      }
      int next = topology.neighbour(t, k);
      if (next < 0 || next == triangle) {
        return;
      }
      int edge = topology.triangleEdge(t, k);
      int out = -1;
      for (int j = 0; j < 3; j++) {
        if (topology.triangleEdge(next, j) != edge && crosses(next, j)) {
          out = j;
        }
      }
      if (out < 0) {
        return;
      }
      t = next;
      k = out;
    }
  }

  private double side(int vertex) {
    return (mesh.x(vertex) - start.x()) * normal.x()
        + (mesh.y(vertex) - start.y()) * normal.y()
        + (mesh.z(vertex) - start.z()) * normal.z();
  }

  private boolean crosses(int t, int k) {
    return side(mesh.corner(t, k)) >= 0 != side(mesh.corner(t, k == 2 ? 0 : k + 1)) >= 0;
  }

  private double share(int a, int b) {
    double sa = side(a);
    double sb = side(b);
    return sa / (sa - sb);
  }

  private Vec3 crossing(int t, int k) {
    int a = mesh.corner(t, k);
    int b = mesh.corner(t, k == 2 ? 0 : k + 1);
    double s = share(a, b);
    return new Vec3(
        mesh.x(a) + s * (mesh.x(b) - mesh.x(a)),
        mesh.y(a) + s * (mesh.y(b) - mesh.y(a)),
        mesh.z(a) + s * (mesh.z(b) - mesh.z(a)));
  }
}
