package rodwork.survey.seating;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;
import rodwork.survey.Surveyor;

/** Finds three biting surfaces, wide apart, on which a key can sit. */
final class Seats {
  /** Biting surfaces lie this near to the highest of the arch, along the occlusal normal [mm]. */
  private static final double BITING_MM = 5;

  private static final double PLACE_MM = 4;

  /** Flattest triangle on which a key does not rock [mm of height]. */
  private static final double LEAST_SPREAD_MM = 12;

  private Seats() {}

  static List<Vec3> find(Surveyor surveyor, Vec3 occlusal, Overhang overhang, double padRadius) {
    TriangleMesh mesh = surveyor.topology().mesh();
    double top = Double.NEGATIVE_INFINITY;
    boolean[] anatomic = new boolean[mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!surveyor.surface().isBase(t)) {
        for (int k = 0; k < 3; k++) {
          anatomic[mesh.corner(t, k)] = true;
        }
      }
    }
    for (int v = 0; v < anatomic.length; v++) {
      top = anatomic[v] ? Math.max(top, mesh.vertex(v).dot(occlusal)) : top;
    }
    Map<List<Long>, Vec3> highest = new HashMap<>();
    for (int v = 0; v < anatomic.length; v++) {
      Vec3 q = mesh.vertex(v);
      if (anatomic[v] && q.dot(occlusal) > top - BITING_MM && overhang.depthAt(q) == 0) {
        List<Long> cell =
            List.of(
                Math.round(q.x() / PLACE_MM),
                Math.round(q.y() / PLACE_MM),
                Math.round(q.z() / PLACE_MM));
        highest.merge(cell, q, (a, b) -> a.dot(overhang.axis()) >= b.dot(overhang.axis()) ? a : b);
      }
    }
    return widest(summits(highest.values(), overhang.axis(), padRadius), overhang.axis());
  }

  /** The places with none higher near by, so that a pad rests on its seat. */
  private static List<Vec3> summits(Collection<Vec3> places, Vec3 axis, double radius) {
    return places.stream()
        .filter(
            place ->
                places.stream()
                    .noneMatch(
                        other ->
                            other.minus(place).across(axis).length() < radius
                                && other.dot(axis) > place.dot(axis)))
        .toList();
  }

  private static List<Vec3> widest(List<Vec3> places, Vec3 axis) {
    List<Vec3> best = List.of();
    double most = 0;
    for (int i = 0; i < places.size(); i++) {
      for (int j = 0; j < i; j++) {
        for (int k = 0; k < j; k++) {
          Vec3 a = places.get(i);
          Vec3 b = places.get(j);
          Vec3 c = places.get(k);
          double spread = leastHeight(a, b, c, axis);
          if (spread > most) {
            most = spread;
            best = List.of(a, b, c);
          }
        }
      }
    }
    if (most < LEAST_SPREAD_MM) {
      throw SeatingProblem.NO_THREE_SEATS.with(LEAST_SPREAD_MM, most);
    }
    return best;
  }

  /** The least height of a triangle, seen along the axis [mm]. */
  static double leastHeight(Vec3 a, Vec3 b, Vec3 c, Vec3 axis) {
    double twice = Math.abs(b.minus(a).cross(c.minus(a)).dot(axis));
    double longest =
        Math.max(
            b.minus(a).across(axis).length(),
            Math.max(c.minus(b).across(axis).length(), a.minus(c).across(axis).length()));
    return longest > 0 ? twice / longest : 0;
  }
}
