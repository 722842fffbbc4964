package rodwork.app.operation;

import java.util.function.Consumer;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.survey.Tilt;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.PathMap;
import rodwork.survey.path.PathRules;
import rodwork.survey.path.PathSearch;
import rodwork.survey.path.PathSites;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.plane.PlaneRules;

/** Tries every tilt on a cast whose teeth are known. */
public final class SearchPath {
  private SearchPath() {}

  /** The rules that a search goes by. */
  public record SearchRules(PathRules path, PlaneRules planes) {
    public static final SearchRules SHIPPED =
        new SearchRules(PathRules.SHIPPED, PlaneRules.SHIPPED);
  }

  /**
   * What a search found.
   *
   * @param teeth the cast with its teeth
   * @param sites where it looked
   * @param map every tilt tried
   * @param best the best tilt, refined on the cast itself
   * @param reference the reference orientation, on the cast itself
   * @param comparison what the best tilt changes against the reference orientation
   */
  public record Found(
      CastTeeth teeth,
      PathSites sites,
      PathMap map,
      PathFactors best,
      PathFactors reference,
      PathComparison comparison) {
    public OpenedCast cast() {
      return teeth.cast();
    }
  }

  /** A search on a cast, made once. */
  public static PathSearch prepare(CastTeeth teeth, PathSites sites, SearchRules rules) {
    return PathSearch.of(
        teeth.arch(), sites, rules.path(), rules.planes(), teeth.cast().surveyor().rules());
  }

  /** Where to look. */
  public static PathSites sites(CastTeeth teeth, SearchRules rules) {
    return SiteFinder.find(
        teeth.arch(),
        TriangleTree.of(teeth.cast().mesh()),
        teeth.dentition(),
        rules.path(),
        rules.planes());
  }

  /**
   * Searches.
   *
   * @param coneDeg widest total tilt [degrees]
   * @param coarse is given a map of few tilts first
   */
  public static Found of(
      CastTeeth teeth, SearchRules rules, double coneDeg, Consumer<PathMap> coarse, Watch watch) {
    watch.progress("looking for planes and undercuts", 0);
    PathSites sites = sites(teeth, rules);
    watch.check();
    PathSearch search = prepare(teeth, sites, rules);
    PathMap map = search.map(coneDeg, coarse, watch);
    PathFactors best = search.refined(map.best(), coneDeg, watch);
    PathFactors reference = search.at(Tilt.REFERENCE, watch);
    return new Found(
        teeth, sites, map, best, reference, PathComparison.of(reference, best, rules.path()));
  }
}
