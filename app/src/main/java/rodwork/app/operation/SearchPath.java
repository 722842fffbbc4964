package rodwork.app.operation;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.plan.Plan;
import rodwork.design.plan.RigidParts;
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
import rodwork.survey.path.Zone;

/** Tries every tilt on a cast whose teeth are known. */
public final class SearchPath {
  private SearchPath() {}

  /**
   * What a search found.
   *
   * @param teeth the cast with its teeth
   * @param sites where it looked
   * @param map every tilt tried
   * @param choices the few tilts worth choosing between, on the cast itself
   * @param best the best tilt, refined on the cast itself: none of the choices is worth more
   * @param reference the reference orientation, on the cast itself
   * @param comparison what the best tilt changes against the reference orientation
   */
  public record Found(
      CastTeeth teeth,
      PathSites sites,
      PathMap map,
      List<PathFactors> choices,
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
   * @param rules what tilts are weighed by
   */
  public record Prepared(CastTeeth teeth, PathSites sites, PathSearch search, PathRules rules) {
    /**
     * Searches.
     *
     * @param coneDeg widest total tilt [degrees]
     */
    public Found found(double coneDeg, Watch watch) {
      PathMap map = search.map(coneDeg, watch);
      PathFactors best = search.refined(map.best(), coneDeg, watch);
      PathFactors reference = search.at(Tilt.REFERENCE, watch);
      List<PathFactors> choices =
          map.choices().stream().map(choice -> search.at(choice.tilt(), watch)).toList();
      // The map is drawn on a thinned cast: on the cast itself another of its tilts may be ahead.
      PathFactors ahead =
          Stream.concat(choices.stream(), Stream.of(reference))
              .max(Comparator.comparingDouble(PathFactors::worth))
              .orElse(best);
      if (ahead.worth() > best.worth()) {
        PathFactors other = search.refined(ahead, coneDeg, watch);
        best = other.worth() > ahead.worth() ? other : ahead;
      }
      return new Found(
          teeth, sites, map, choices, best, reference, PathComparison.of(reference, best, rules));
    }
  }

  /**
   * What counts as in the way of rigid parts.
   *
   * @param leftOut kinds that do not
   * @param plan whose parts stand for the zones that anatomy suggests; null: there is none yet
   */
  public record InTheWay(Set<Zone.Kind> leftOut, @Nullable Plan plan) {
    /** What anatomy suggests, all of it. */
    public static final InTheWay ANATOMY = new InTheWay(Set.of(), null);

    public InTheWay {
      leftOut = Set.copyOf(leftOut);
    }

    private PathSites of(PathSites sites, CastTeeth teeth) {
      return (plan == null
              ? sites
              : sites.with(RigidParts.zones(teeth.arch(), teeth.dentition(), plan)))
          .without(leftOut);
    }
  }

  /** Makes a cast ready. */
  public static Prepared prepare(CastTeeth teeth, Rulebook book, InTheWay inTheWay, Watch watch) {
    watch.progress("looking for planes and undercuts", 0);
    PathSites sites =
        inTheWay.of(
            SiteFinder.find(
                teeth.arch(),
                TriangleTree.of(teeth.cast().mesh()),
                teeth.dentition(),
                book.path(),
                book.planes()),
            teeth);
    watch.check();
    return new Prepared(
        teeth,
        sites,
        PathSearch.of(
            teeth.arch(), sites, book.path(), book.planes(), teeth.cast().surveyor().rules()),
        book.path());
  }
}
