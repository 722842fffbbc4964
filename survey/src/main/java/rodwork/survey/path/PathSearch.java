package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.Thinning;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.geometry.overhang.PlaceDepths;
import rodwork.survey.SurveyRules;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneRules;

/**
 * Tries every tilt of a cone on one cast.
 *
 * <p>All is measured on the part of the cast that can tell in it ({@link DepthReach}). The map is
 * made on a thinned copy of that part, whose surface is off by {@link #THINNING_MM} or less almost
 * everywhere; what {@link #at} and {@link #refined} say is measured on the cast's own triangles.
 */
public final class PathSearch {
  private static final double THINNING_MM = 0.02;

  /** A coarse map has this many steps from its middle to its rim. */
  private static final double COARSE_RINGS = 3;

  /** The refinement ends below this step [degrees]. */
  private static final double FINEST_STEP_DEG = 0.1;

  /** On the cast itself the refinement starts with this step [degrees]. */
  private static final double FIRST_STEP_DEG = 0.2;

  private final Arch arch;
  private final PathSites sites;
  private final List<Vec3> places;
  private final List<Vec3> along;
  private final PathRules rules;
  private final PlaneRules planes;
  private final double shallowMm;
  private final OverhangLimits limits;
  private @Nullable Grounds grounds;
  private @Nullable Exact exact;

  private PathSearch(
      Arch arch, PathSites sites, PathRules rules, PlaneRules planes, SurveyRules survey) {
    this.arch = arch;
    this.sites = sites;
    this.places = sites.places();
    this.along = sites.along();
    this.rules = rules;
    this.planes = planes;
    this.shallowMm = survey.shallow().value();
    this.limits =
        new OverhangLimits(
            survey.cap().value(), survey.shankRadius().value(), survey.shankReach().value());
  }

  /** What a map of a cone is made on: the part of the cast that can tell, and that part thinned. */
  private record Grounds(double coneDeg, TriangleMesh part, Ground thin) {}

  /** The part of the cast itself; a map alone does without it. */
  private record Exact(Grounds of, Ground ground) {}

  /** A mesh and what reads the sites on it. */
  private record Ground(Overhang.Caster caster, PathAppraiser appraiser) {}

  /** What tilts within a cone are measured on, made when it is first needed. */
  private synchronized Grounds grounds(double coneDeg) {
    Grounds known = grounds;
    double cone = Math.max(rules.cone().value(), coneDeg);
    if (known == null || known.coneDeg < cone) {
      TriangleMesh part =
          DepthReach.of(
              arch.mesh(),
              Stream.concat(places.stream(), along.stream()).toList(),
              arch.frame().z(),
              cone,
              limits.capMm());
      known = new Grounds(cone, part, ground(Thinning.of(part, THINNING_MM, Watch.NONE)));
      grounds = known;
    }
    return known;
  }

  private synchronized Ground exact(double coneDeg) {
    Grounds on = grounds(coneDeg);
    Exact known = exact;
    if (known == null || !known.of.equals(on)) {
      known = new Exact(on, ground(on.part));
      exact = known;
    }
    return known.ground;
  }

  private Ground ground(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    Overhang.Caster caster = new Overhang.Caster(topology, BoundaryLoops.of(topology));
    PlaceDepths atReference = caster.at(places, along, arch.frame().z(), limits, Watch.NONE);
    return new Ground(caster, new PathAppraiser(sites, rules, planes, shallowMm, atReference));
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
    return new PathMap(
        all(grid(coneDeg, stepDeg), grounds(coneDeg).thin, "trying tilts", watch),
        coneDeg,
        stepDeg,
        rules);
  }

  private List<PathFactors> all(List<Tilt> tilts, Ground ground, String what, Watch watch) {
    AtomicInteger done = new AtomicInteger();
    return tilts.stream()
        .parallel()
        .map(
            tilt -> {
              watch.check();
              PathFactors factors = at(tilt, ground, watch);
              watch.progress(what, (double) done.incrementAndGet() / tilts.size());
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
    return at(tilt, exact(tilt.totalDeg()), watch);
  }

  private PathFactors at(Tilt tilt, Ground ground, Watch watch) {
    Vec3 axis = tilt.axis(arch.frame());
    return ground.appraiser.at(tilt, ground.caster.at(places, along, axis, limits, watch));
  }

  /**
   * The best tilt near another, found on the cast itself by a pattern search (Hooke and Jeeves, J.
   * ACM 8, 1961) down to {@link #FINEST_STEP_DEG}; its first, wider steps on the thinned copy.
   *
   * @param coneDeg widest total tilt [degrees]
   */
  public PathFactors refined(PathFactors start, double coneDeg, Watch watch) {
    Ground thin = grounds(coneDeg).thin;
    PathFactors near = refined(start.tilt(), rules.step().value() / 2, coneDeg, thin, watch);
    return refined(near.tilt(), FIRST_STEP_DEG, coneDeg, exact(coneDeg), watch);
  }

  private PathFactors refined(
      Tilt start, double firstDeg, double coneDeg, Ground ground, Watch watch) {
    PathFactors best = at(start, ground, watch);
    Set<Tilt> tried = new HashSet<>(Set.of(start));
    for (double step = firstDeg; step >= FINEST_STEP_DEG; step /= 2) {
      boolean better = true;
      while (better) {
        List<Tilt> next =
            around(best.tilt(), step).stream()
                .filter(tilt -> tilt.totalDeg() <= coneDeg + 1e-9 && tried.add(tilt))
                .toList();
        PathFactors there =
            all(next, ground, "refining the best tilt", watch).stream()
                .max(Comparator.comparingDouble(PathFactors::worth))
                .orElse(best);
        better = there.worth() > best.worth() + 1e-9;
        best = better ? there : best;
      }
    }
    return best;
  }

  /** The eight neighbours of a tilt, to a thousandth of a degree. */
  private static List<Tilt> around(Tilt tilt, double step) {
    List<Tilt> tilts = new ArrayList<>();
    for (int i = -1; i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        if (i != 0 || j != 0) {
          tilts.add(
              new Tilt(
                  rounded(tilt.anteriorDeg() + i * step), rounded(tilt.rightDeg() + j * step)));
        }
      }
    }
    return tilts;
  }

  private static double rounded(double deg) {
    return Math.rint(deg * 1000) / 1000 + 0.0;
  }
}
