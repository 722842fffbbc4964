package rodwork.survey.path;

import java.util.List;
import java.util.Optional;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSite;

/**
 * What guiding planes along one path would be.
 *
 * <p>A plane is worth {@code s = min(1, H/H₀)/(1 + e/e₀)}, with e the greatest enamel it takes, e₀
 * the enamel at which it is worth half, H its height and H₀ the height wanted. Planes count in
 * pairs, and the more the farther they are apart: {@code worth = Σ √(sᵢ·sⱼ)·wᵢ·wⱼ·dᵢⱼ / Σ
 * wᵢ·wⱼ·dᵢⱼ} over all pairs, d their distance, w the weight of the surface (less on a lingual one).
 * So two planes worth half each are a pair worth half, and one alone is worth nothing.
 *
 * @param planes one a site, in the order of the sites; empty where there is no room for a plane
 * @param enamelMm greatest enamel taken, mean over the sites, each at most {@link #MOST_MM} [mm]
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

  /** More enamel than this is told as this much: no crown has more to give [mm]. */
  private static final double MOST_MM = 4;

  private static double weight(PlaneSite site, PathRules rules) {
    return site.face().isProximal() ? 1 : rules.reciprocal().value();
  }

  static Guiding of(
      PathSites sites, List<Optional<PlaneReading>> planes, PathRules rules, PlaneRules limits) {
    double half = rules.enamel().value();
    double[] s = new double[planes.size()];
    double enamel = 0;
    int parallel = 0;
    for (int i = 0; i < s.length; i++) {
      Optional<PlaneReading> plane = planes.get(i);
      double greatest = plane.map(PlaneReading::greatestMm).orElse(MOST_MM);
      double height = plane.map(PlaneReading::heightMm).orElse(0.0);
      double wanted = sites.planes().get(i).wantedHeight().value();
      s[i] = Math.min(1, height / wanted) / (1 + greatest / half);
      enamel += Math.min(MOST_MM, greatest);
      boolean near = plane.filter(read -> guides(read, limits)).isPresent();
      parallel += near ? 1 : 0;
    }
    double sum = 0;
    double all = 0;
    for (int i = 0; i < s.length; i++) {
      for (int j = 0; j < i; j++) {
        double apart = sites.planes().get(i).place().distance(sites.planes().get(j).place());
        double weight = apart * weight(sites.planes().get(i), rules);
        weight *= weight(sites.planes().get(j), rules);
        sum += Math.sqrt(s[i] * s[j]) * weight;
        all += weight;
      }
    }
    return new Guiding(
        List.copyOf(planes),
        s.length == 0 ? MOST_MM : enamel / s.length,
        parallel,
        all > 0 ? sum / all : 0);
  }
}
