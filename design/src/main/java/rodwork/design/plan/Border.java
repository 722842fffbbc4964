package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfaceDistance;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.survey.SectionWalk;

/**
 * The edge of a connector towards the teeth: at each station the first place on the way inwards
 * that is so far along the surface from every gingival margin; over a space, so far from the crest.
 */
final class Border {
  /** Margins are sown this close [mm]. */
  private static final double SEED_MM = 0.25;

  /** A way inwards that leads so far out again went over the row, not over the palate [mm]. */
  private static final double OUTWARD_UPPER_MM = 1.5;

  /** The same below lower teeth, where the lingual slope may be undercut so far [mm]. */
  private static final double OUTWARD_LOWER_MM = 4;

  private final Ground ground;
  private final SurfaceDistance fromMargins;
  final List<Station> stations;

  Border(Ground ground, Dentition dentition, double reachMm) {
    this.ground = ground;
    this.stations = Station.of(ground, dentition);
    List<SurfacePoint> seeds = new ArrayList<>();
    for (Tooth tooth : dentition.inOrder()) {
      if (dentition.standing().contains(tooth.number())) {
        sow(tooth.margin(), seeds);
      }
    }
    this.fromMargins = SurfaceDistance.from(ground.mesh(), seeds, reachMm);
  }

  private void sow(GingivalMargin margin, List<SurfacePoint> seeds) {
    int n = margin.points().size();
    for (int i = 0; i < n; i++) {
      Vec3 a = margin.points().get(i);
      Vec3 b = margin.points().get((i + 1) % n);
      int parts = Math.max(1, (int) Math.ceil(a.distance(b) / SEED_MM));
      for (int k = 0; k < parts; k++) {
        Vec3 p = a.plus(b.minus(a).times((double) k / parts));
        ground.tree.closest(p, 1).ifPresent(seeds::add);
      }
    }
  }

  /** Distance along the surface from the nearest margin [mm]; infinite far away. */
  double fromMargins(Vec3 point) {
    return fromMargins.at(ground.lay(point));
  }

  /** The station of its tooth that lies beside a rest, seen from above. */
  Optional<Station> beside(Part.Rest rest) {
    return stations.stream()
        .filter(s -> s.tooth().filter(rest.tooth()::equals).isPresent())
        .min(
            Comparator.comparingDouble(
                s -> s.at().point().minus(rest.middle()).across(ground.frame.z()).length()));
  }

  /** The station nearest to a point. */
  Station nearest(Vec3 point) {
    return stations.stream()
        .min(Comparator.comparingDouble(s -> s.at().point().distance(point)))
        .orElseThrow();
  }

  /**
   * The way from a station inwards.
   *
   * @param fromMarginMm distance from the margins at a tooth
   * @param fromCrestMm distance from the crest over a space
   * @param beyondMm how much farther
   * @return empty where the scan ends before
   */
  Optional<Vec3> at(Station station, double fromMarginMm, double fromCrestMm, double beyondMm) {
    return way(station, fromMarginMm, fromCrestMm, beyondMm)
        .at()
        .filter(
            p ->
                ground.frame.jaw() == Jaw.LOWER
                    || p.minus(station.at().point()).dot(station.inward()) > 0);
  }

  /**
   * How far a way inwards leads.
   *
   * @param at the place wanted; empty where the way ends before
   * @param shownMm from the margins, over a space from the crest, to the end of the way: what is
   *     wanted where that is reached
   */
  record Way(Optional<Vec3> at, double shownMm) {}

  /** The same, with how far the scan shows the way where the place is not reached. */
  Way way(Station station, double fromMarginMm, double fromCrestMm, double beyondMm) {
    double[] reached = {Double.NaN};
    Vec3 down = ground.frame.z().times(-0.87).plus(station.inward().times(0.5));
    boolean crest = station.tooth().isEmpty();
    double from = crest ? fromCrestMm : fromMarginMm;
    double outward = ground.frame.jaw() == Jaw.LOWER ? OUTWARD_LOWER_MM : OUTWARD_UPPER_MM;
    List<Vec3> found = new ArrayList<>();
    double[] before = {0, 0};
    double[] shown = {0};
    Vec3[] last = {station.at().point()};
    new SectionWalk(
            ground.arch.topology(),
            station.at().point(),
            station.inward().cross(ground.frame.z()).unit())
        .walk(
            station.at().triangle(),
            crest ? station.inward() : down,
            (point, a, b, s, triangle, length) -> {
              double inwards = point.minus(station.at().point()).dot(station.inward());
              if (!ground.isAnatomy(triangle) || length > 60 || inwards < -outward) {
                return false;
              }
              double value =
                  (crest ? length : fromMargins.at(a) + s * (fromMargins.at(b) - fromMargins.at(a)))
                      - from;
              if (Double.isNaN(reached[0]) && value >= 0) {
                double t = value > before[0] && before[0] < 0 ? before[0] / (before[0] - value) : 1;
                reached[0] = before[1] + (length - before[1]) * Math.clamp(t, 0, 1);
              }
              shown[0] =
                  Double.isNaN(reached[0])
                      ? Math.max(shown[0], from + value)
                      : from + Math.min(beyondMm, length - reached[0]);
              if (!Double.isNaN(reached[0]) && length >= reached[0] + beyondMm) {
                double t =
                    length > before[1]
                        ? (reached[0] + beyondMm - before[1]) / (length - before[1])
                        : 1;
                found.add(last[0].plus(point.minus(last[0]).times(Math.clamp(t, 0, 1))));
                return false;
              }
              before[0] = value;
              before[1] = length;
              last[0] = point;
              return true;
            });
    return new Way(found.stream().findFirst(), shown[0]);
  }
}
