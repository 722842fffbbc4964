package rodwork.survey.path;

import java.util.List;
import java.util.Optional;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneRules;

/**
 * What guiding planes along one path would be.
 *
 * <p>A plane is worth {@code s = (1 − e/e₀)·min(1, H/H₀)}, at least 0, with e the greatest enamel
 * it takes, e₀ the enamel at which it is worth nothing, H its height and H₀ the height wanted.
 * Planes count in pairs, and the more the farther they are apart: {@code worth = Σ sᵢ·sⱼ·dᵢⱼ / Σ
 * dᵢⱼ} over all pairs, d their distance.
 *
 * @param planes one a site, in the order of the sites; empty where there is no room for a plane
 * @param enamelMm greatest enamel taken, mean over the sites, each at most e₀ [mm]
 * @param parallel how many are within the tolerance of parallel as they are
 * @param worth 0 to 1; 0 where there is no pair
 */
public record Guiding(
    List<Optional<PlaneReading>> planes, double enamelMm, int parallel, double worth) {

  /** Parallel within the tolerance, and with no more undercut than a guiding plane may have. */
  private static boolean guides(PlaneReading plane, PlaneRules limits) {
    double undercut = -plane.heightMm() * Math.tan(Math.toRadians(plane.angleDeg()));
    return plane.angleDeg() <= limits.parallel().value() && undercut <= limits.divergence().value();
  }

  static Guiding of(
      PathSites sites, List<Optional<PlaneReading>> planes, PathRules rules, PlaneRules limits) {
    double most = rules.enamel().value();
    double[] s = new double[planes.size()];
    double enamel = 0;
    int parallel = 0;
    for (int i = 0; i < s.length; i++) {
      Optional<PlaneReading> plane = planes.get(i);
      double greatest = plane.map(PlaneReading::greatestMm).orElse(most);
      double height = plane.map(PlaneReading::heightMm).orElse(0.0);
      double wanted = sites.planes().get(i).wantedHeight().value();
      s[i] = Math.max(0, 1 - greatest / most) * Math.min(1, height / wanted);
      enamel += Math.min(most, greatest);
      boolean near = plane.filter(read -> guides(read, limits)).isPresent();
      parallel += near ? 1 : 0;
    }
    double sum = 0;
    double all = 0;
    for (int i = 0; i < s.length; i++) {
      for (int j = 0; j < i; j++) {
        double apart = sites.planes().get(i).place().distance(sites.planes().get(j).place());
        sum += s[i] * s[j] * apart;
        all += apart;
      }
    }
    return new Guiding(
        List.copyOf(planes),
        s.length == 0 ? most : enamel / s.length,
        parallel,
        all > 0 ? sum / all : 0);
  }
}
