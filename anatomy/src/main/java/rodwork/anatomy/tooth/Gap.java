package rodwork.anatomy.tooth;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The way between two crowns.
 *
 * @param touches whether a triangle of one borders on one of the other
 * @param mm shortest distance between vertices of the two [mm]; 0 where they touch
 * @param from its end on the first crown, or the middle of the contact
 * @param to its end on the second crown, or the middle of the contact
 */
record Gap(boolean touches, double mm, Vec3 from, Vec3 to) {
  /** The nearest places are sought this far behind the foremost ones [mm]. */
  private static final double DEPTH_MM = 3;

  static Gap between(CrownPatch a, CrownPatch b) {
    Gap contact = contact(a, b);
    if (contact.touches) {
      return contact;
    }
    Vec3 way = b.centroid().minus(a.centroid()).unit();
    List<Vec3> ends = foremost(a, way);
    List<Vec3> others = foremost(b, way.times(-1));
    double least = Double.POSITIVE_INFINITY;
    Vec3 from = a.centroid();
    Vec3 to = b.centroid();
    for (Vec3 p : ends) {
      for (Vec3 q : others) {
        double dx = p.x() - q.x();
        double dy = p.y() - q.y();
        double dz = p.z() - q.z();
        double squared = dx * dx + dy * dy + dz * dz;
        if (squared < least) {
          least = squared;
          from = p;
          to = q;
        }
      }
    }
    return new Gap(false, Math.sqrt(least), from, to);
  }

  private static Gap contact(CrownPatch a, CrownPatch b) {
    MeshTopology topology = a.topology();
    TriangleMesh mesh = topology.mesh();
    Vec3 sum = Vec3.ZERO;
    double length = 0;
    for (int t : a.triangles()) {
      for (int k = 0; k < 3; k++) {
        int other = topology.neighbour(t, k);
        if (other >= 0 && b.within().get(other)) {
          Vec3 p = mesh.vertex(mesh.corner(t, k));
          Vec3 q = mesh.vertex(mesh.corner(t, (k + 1) % 3));
          double d = p.distance(q);
          sum = sum.plus(p.plus(q).times(d / 2));
          length += d;
        }
      }
    }
    Vec3 at = length > 0 ? sum.times(1 / length) : Vec3.ZERO;
    return new Gap(length > 0, 0, at, at);
  }

  private static List<Vec3> foremost(CrownPatch crown, Vec3 way) {
    TriangleMesh mesh = crown.topology().mesh();
    double front = Double.NEGATIVE_INFINITY;
    for (int t : crown.triangles()) {
      front = Math.max(front, mesh.vertex(mesh.corner(t, 0)).dot(way));
    }
    List<Vec3> found = new ArrayList<>();
    int last = -1;
    for (int t : crown.triangles()) {
      int v = mesh.corner(t, 0);
      if (v != last && mesh.vertex(v).dot(way) > front - DEPTH_MM) {
        found.add(mesh.vertex(v));
        last = v;
      }
    }
    return found;
  }
}
