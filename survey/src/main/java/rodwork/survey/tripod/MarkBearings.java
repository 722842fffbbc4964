package rodwork.survey.tripod;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.dentition.Dentition;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * How a tripod mark is set on plaster with dividers: its distances from two landmarks, chosen so
 * that they fix it best.
 *
 * <p>Where the dividers err by e at each landmark, the mark is off by {@code e·√(tr (GᵀG)⁻¹)} on
 * its surface, the rows of G being the directions from the landmarks laid on the surface. Of the
 * two places that two distances allow, the other one lies at least {@link #APART_MM} away.
 *
 * @param first the nearer landmark
 * @param second the farther one
 * @param errorMm how far the mark is off, root mean square, where each distance is off by the
 *     picking error of the rules [mm]
 */
public record MarkBearings(Bearing first, Bearing second, double errorMm) {
  /** Dividers are set between these [mm]. */
  private static final double NEAREST_MM = 3;

  private static final double FARTHEST_MM = 60;

  /** The mirrored place that the two distances allow as well lies at least so far off [mm]. */
  private static final double APART_MM = 4;

  /** A landmark this much farther off must be better by a tenth of the error [mm]. */
  private static final double FARTHER_MM = 10;

  /**
   * A distance from a landmark.
   *
   * @param landmark what the first point of the dividers stands on
   * @param distanceMm to the mark, straight [mm]
   */
  public record Bearing(Landmark landmark, double distanceMm) {}

  /**
   * The bearings of the marks of a tripod, in their order; empty where no two landmarks fix one.
   *
   * @param mesh that the marks lie on
   * @param pickingMm error of a distance [mm]
   */
  public static List<Optional<MarkBearings>> of(
      Tripod tripod, TriangleMesh mesh, Dentition dentition, double pickingMm) {
    List<Landmark> landmarks = Landmarks.of(mesh, dentition);
    return tripod.marks().stream()
        .map(
            mark -> {
              Vec3 normal = mesh.doubleAreaNormal(mark.triangle());
              return normal.length() > 0
                  ? of(mark, normal.unit(), landmarks, pickingMm)
                  : Optional.<MarkBearings>empty();
            })
        .toList();
  }

  /** Both, the nearer first. */
  public List<Bearing> both() {
    return List.of(first, second);
  }

  /**
   * The bearings of one mark.
   *
   * @param normal of the surface at the mark [unit vector]
   * @param pickingMm error of a distance [mm]
   * @return none where no two landmarks fix it
   */
  public static Optional<MarkBearings> of(
      TripodMark mark, Vec3 normal, List<Landmark> landmarks, double pickingMm) {
    Vec3 e1 = normal.anyPerpendicular();
    Vec3 e2 = normal.cross(e1);
    List<Landmark> near = new ArrayList<>();
    for (Landmark landmark : landmarks) {
      double distance = landmark.point().distance(mark.point());
      if (distance >= NEAREST_MM && distance <= FARTHEST_MM) {
        near.add(landmark);
      }
    }
    near.sort(Comparator.comparingDouble(landmark -> landmark.point().distance(mark.point())));
    MarkBearings best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < near.size(); i++) {
      for (int j = i + 1; j < near.size(); j++) {
        Bearing a = new Bearing(near.get(i), near.get(i).point().distance(mark.point()));
        Bearing b = new Bearing(near.get(j), near.get(j).point().distance(mark.point()));
        Vec3 u = mark.point().minus(a.landmark.point());
        Vec3 v = mark.point().minus(b.landmark.point());
        double ux = u.dot(e1) / a.distanceMm;
        double uy = u.dot(e2) / a.distanceMm;
        double vx = v.dot(e1) / b.distanceMm;
        double vy = v.dot(e2) / b.distanceMm;
        double det = ux * vy - uy * vx;
        double error = pickingMm * Math.sqrt(ux * ux + uy * uy + vx * vx + vy * vy) / Math.abs(det);
        double apart = 2 * fromLine(u.across(normal), v.across(normal));
        double cost = error * (1 + 0.1 * (a.distanceMm + b.distanceMm) / FARTHER_MM);
        if (apart >= APART_MM && cost < least) {
          least = cost;
          best = new MarkBearings(a, b, error);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Distance of the mark from the line through two landmarks, given the ways from them to it. */
  private static double fromLine(Vec3 u, Vec3 v) {
    double base = u.minus(v).length();
    return base > 0 ? u.cross(v).length() / base : 0;
  }
}
