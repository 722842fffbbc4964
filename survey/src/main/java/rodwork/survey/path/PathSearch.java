package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.Thinning;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.survey.SurveyRules;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneRules;

/**
 * Tries every tilt of a cone on one cast.
 *
 * <p>The map is made on a thinned copy of the cast, whose surface is off by {@link #THINNING_MM} or
 * less almost everywhere; what {@link #at} and {@link #refined} say is measured on the cast itself.
 */
public final class PathSearch {
  private static final double THINNING_MM = 0.02;

  /** A coarse map has this many steps from its middle to its rim. */
  private static final double COARSE_RINGS = 3;

  /** The refinement ends below this step [degrees]. */
  private static final double FINEST_STEP_DEG = 0.1;

  private static final double FIRST_STEP_DEG = 0.4;

  private final ArchFrame frame;
  private final PathRules rules;
  private final OverhangLimits limits;
  private final Overhang.Caster exact;
  private final Overhang.Caster thin;
  private final PathAppraiser onExact;
  private final PathAppraiser onThin;

  private PathSearch(
      Arch arch, PathSites sites, PathRules rules, PlaneRules planes, SurveyRules survey) {
    this.frame = arch.frame();
    this.rules = rules;
    this.limits =
        new OverhangLimits(
            survey.cap().value(), survey.shankRadius().value(), survey.shankReach().value());
    this.exact = new Overhang.Caster(arch.topology(), BoundaryLoops.of(arch.topology()));
    MeshTopology thinned = MeshTopology.of(Thinning.of(arch.mesh(), THINNING_MM, Watch.NONE));
    this.thin = new Overhang.Caster(thinned, BoundaryLoops.of(thinned));
    double shallow = survey.shallow().value();
    this.onExact = appraiser(exact, sites, planes, shallow);
    this.onThin = appraiser(thin, sites, planes, shallow);
  }

  private PathAppraiser appraiser(
      Overhang.Caster caster, PathSites sites, PlaneRules planes, double shallowMm) {
    return new PathAppraiser(
        sites, rules, planes, shallowMm, caster.sparsely(frame.z(), limits, Watch.NONE));
  }

  /** A search on one cast. */
  public static PathSearch of(
      Arch arch, PathSites sites, PathRules rules, PlaneRules planes, SurveyRules survey) {
    return new PathSearch(arch, sites, rules, planes, survey);
  }

  /**
   * The map of a cone.
   *
   * @param coneDeg widest total tilt [degrees], above 0, below 60
   * @param watch is told the progress, and stops the search
   */
  public PathMap map(double coneDeg, Watch watch) {
    return map(coneDeg, rules.step().value(), watch);
  }

  /** A map of a few dozen tilts, to be shown while the whole one is made. */
  public PathMap coarse(double coneDeg, Watch watch) {
    return map(coneDeg, Math.max(rules.step().value(), coneDeg / COARSE_RINGS), watch);
  }

  private PathMap map(double coneDeg, double stepDeg, Watch watch) {
    if (!(coneDeg > 0 && coneDeg < 60)) {
      throw new IllegalArgumentException("a cone between 0 and 60 degrees, not " + coneDeg);
    }
    return new PathMap(all(grid(coneDeg, stepDeg), watch), coneDeg, stepDeg, rules);
  }

  private List<PathFactors> all(List<Tilt> tilts, Watch watch) {
    AtomicInteger done = new AtomicInteger();
    return tilts.stream()
        .parallel()
        .map(
            tilt -> {
              watch.check();
              PathFactors factors = at(tilt, thin, onThin, watch);
              watch.progress("trying tilts", (double) done.incrementAndGet() / tilts.size());
              return factors;
            })
        .toList();
  }

  /** The tilts of a square lattice within a cone, the reference orientation first. */
  static List<Tilt> grid(double coneDeg, double stepDeg) {
    List<Tilt> tilts = new ArrayList<>();
    int n = (int) Math.ceil(coneDeg / stepDeg);
    for (int i = -n; i <= n; i++) {
      for (int j = -n; j <= n; j++) {
        Tilt tilt = new Tilt(i * stepDeg, j * stepDeg);
        if (tilt.totalDeg() <= coneDeg + 1e-9) {
          tilts.add(tilt);
        }
      }
    }
    tilts.sort(Comparator.comparingDouble(Tilt::totalDeg));
    return tilts;
  }

  /** What one tilt offers, measured on the cast itself. */
  public PathFactors at(Tilt tilt, Watch watch) {
    return at(tilt, exact, onExact, watch);
  }

  private PathFactors at(Tilt tilt, Overhang.Caster caster, PathAppraiser appraiser, Watch watch) {
    Vec3 axis = tilt.axis(frame);
    return appraiser.at(tilt, caster.sparsely(axis, limits, watch));
  }

  /**
   * The best tilt near another, found on the cast itself by a pattern search (Hooke and Jeeves, J.
   * ACM 8, 1961) down to {@link #FINEST_STEP_DEG}.
   *
   * @param coneDeg widest total tilt [degrees]
   */
  public PathFactors refined(PathFactors start, double coneDeg, Watch watch) {
    PathFactors near =
        refined(
            start.tilt(), rules.step().value() / 2, FINEST_STEP_DEG, coneDeg, thin, onThin, watch);
    return refined(near.tilt(), FIRST_STEP_DEG, FINEST_STEP_DEG, coneDeg, exact, onExact, watch);
  }

  private PathFactors refined(
      Tilt start,
      double firstDeg,
      double lastDeg,
      double coneDeg,
      Overhang.Caster caster,
      PathAppraiser appraiser,
      Watch watch) {
    PathFactors best = at(start, caster, appraiser, watch);
    for (double step = firstDeg; step >= lastDeg; step /= 2) {
      boolean better = true;
      while (better) {
        better = false;
        for (Tilt tilt : around(best.tilt(), step)) {
          watch.check();
          if (tilt.totalDeg() <= coneDeg + 1e-9) {
            PathFactors there = at(tilt, caster, appraiser, watch);
            if (there.worth() > best.worth() + 1e-9) {
              best = there;
              better = true;
            }
          }
        }
      }
    }
    return best;
  }

  private static List<Tilt> around(Tilt tilt, double step) {
    double a = tilt.anteriorDeg();
    double r = tilt.rightDeg();
    return List.of(
        new Tilt(a + step, r),
        new Tilt(a - step, r),
        new Tilt(a, r + step),
        new Tilt(a, r - step),
        new Tilt(a + step, r + step),
        new Tilt(a + step, r - step),
        new Tilt(a - step, r + step),
        new Tilt(a - step, r - step));
  }
}
