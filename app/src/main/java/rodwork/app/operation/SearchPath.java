package rodwork.app.operation;

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

  /**
   * A cast made ready for a search, once; it may be searched any number of times.
   *
   * @param teeth the cast with its teeth
   * @param sites where to look
   * @param search tries tilts
   * @param rules what they are weighed by
   */
  public record Prepared(CastTeeth teeth, PathSites sites, PathSearch search, SearchRules rules) {
    /**
     * Searches.
     *
     * @param coneDeg widest total tilt [degrees]
     */
    public Found found(double coneDeg, Watch watch) {
      PathMap map = search.map(coneDeg, watch);
      PathFactors best = search.refined(map.best(), coneDeg, watch);
      PathFactors reference = search.at(Tilt.REFERENCE, watch);
      return new Found(
          teeth, sites, map, best, reference, PathComparison.of(reference, best, rules.path()));
    }
  }

  /** Makes a cast ready. */
  public static Prepared prepare(CastTeeth teeth, SearchRules rules, Watch watch) {
    watch.progress("looking for planes and undercuts", 0);
    PathSites sites =
        SiteFinder.find(
            teeth.arch(),
            TriangleTree.of(teeth.cast().mesh()),
            teeth.dentition(),
            rules.path(),
            rules.planes());
    watch.check();
    return new Prepared(
        teeth,
        sites,
        PathSearch.of(
            teeth.arch(), sites, rules.path(), rules.planes(), teeth.cast().surveyor().rules()),
        rules);
  }
}
