package rodwork.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;

/**
 * The upright section through a place, in its own plane: s along the outward direction, h along the
 * axis [mm], both from the place.
 *
 * @param origin the place, scan frame [mm]
 * @param direction horizontal unit vector of s, away from the tooth, scan frame
 * @param outlines the cast cut by the plane, polylines of (s, h)
 * @param reading what the rod tells at the place
 * @param depthInSectionMm depth in the direction of the section, u_d [mm]
 * @param rod where the rod stands, s [mm]
 * @param contact where it touches in this section; empty where the place is free
 * @param gauge where the wanted gauge sits in this section; empty without one
 */
public record Profile(
    Vec3 origin,
    Vec3 direction,
    List<List<Spot>> outlines,
    RodReading reading,
    double depthInSectionMm,
    double rod,
    Optional<Spot> contact,
    Optional<Spot> gauge) {

  /** A point of the section [mm]. */
  public record Spot(double s, double h) {}

  /** The cast is drawn this far about the place [mm]. */
  private static final double REACH_MM = 14;

  static Profile of(
      Surveyor surveyor,
      Overhang overhang,
      Gauges gauges,
      Vec3 point,
      int triangle,
      Optional<Double> gaugeMm) {
    Vec3 axis = overhang.axis();
    Vec3 found = Seat.outward(surveyor, overhang, point, triangle);
    Vec3 out = found.length() > 0 ? found : axis.anyPerpendicular();
    RodReading reading = RodReading.of(surveyor, overhang, gauges, point, triangle);
    double inSection = overhang.depthAlong(point, out);
    Optional<Spot> contact = Optional.empty();
    if (reading.overhang().depthMm() > 0 && !reading.overhang().capped()) {
      contact = Optional.of(new Spot(inSection, reading.belowSurveyLineMm()));
    }
    Optional<Spot> gauge =
        gaugeMm
            .flatMap(size -> Seat.of(surveyor, overhang, gauges, point, triangle, size).place())
            .map(
                place -> {
                  Vec3 to = place.point().minus(point);
                  return new Spot(to.dot(out), to.dot(axis));
                });
    return new Profile(
        point,
        out,
        outlines(surveyor.topology(), point, out, axis),
        reading,
        inSection,
        inSection,
        contact,
        gauge);
  }

  private static List<List<Spot>> outlines(
      MeshTopology topology, Vec3 origin, Vec3 out, Vec3 axis) {
    TriangleMesh mesh = topology.mesh();
    Vec3 normal = axis.cross(out).unit();
    double shift = normal.dot(origin);
    int n = mesh.vertexCount();
    double[] side = new double[n];
    boolean[] above = new boolean[n];
    for (int v = 0; v < n; v++) {
      side[v] = normal.x() * mesh.x(v) + normal.y() * mesh.y(v) + normal.z() * mesh.z(v) - shift;
      above[v] = side[v] >= 0;
    }
    List<List<Spot>> outlines = new ArrayList<>();
    for (Contour.Chain chain :
        Contour.chains(
            topology, above, t -> mesh.vertex(mesh.corner(t, 0)).distance(origin) < REACH_MM)) {
      List<Spot> line = new ArrayList<>();
      for (int edge : chain.edges()) {
        int a = topology.edgeVertex(edge, 0);
        int b = topology.edgeVertex(edge, 1);
        double share = side[a] / (side[a] - side[b]);
        Vec3 q =
            mesh.vertex(a).plus(mesh.vertex(b).minus(mesh.vertex(a)).times(share)).minus(origin);
        line.add(new Spot(q.dot(out), q.dot(axis)));
      }
      if (chain.closed()) {
        line.add(line.getFirst());
      }
      outlines.add(line);
    }
    return outlines;
  }
}
