package rodwork.survey.path;

import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import rodwork.geometry.Vec3;
import rodwork.survey.plane.PlaneSite;

/**
 * Where a search looks on one cast.
 *
 * @param planes surfaces that could guide
 * @param terminals places that could hold
 * @param zones surfaces that rigid parts pass
 * @param fronts teeth in the aesthetic zone
 */
public record PathSites(
    List<PlaneSite> planes,
    List<TerminalSite> terminals,
    List<Zone> zones,
    List<FrontSite> fronts) {
  public PathSites {
    planes = List.copyOf(planes);
    terminals = List.copyOf(terminals);
    zones = List.copyOf(zones);
    fronts = List.copyOf(fronts);
  }

  /** The same sites without the zones of some kinds. */
  public PathSites without(Set<Zone.Kind> kinds) {
    return with(zones.stream().filter(zone -> !kinds.contains(zone.kind())).toList());
  }

  /** The same sites with other zones, such as the parts of a plan. */
  public PathSites with(List<Zone> others) {
    return new PathSites(planes, terminals, others, fronts);
  }

  /** All places whose undercut depth is looked at, scan frame [mm]. */
  List<Vec3> places() {
    return Stream.of(
            terminals.stream().flatMap(site -> site.places().stream()),
            samples(false),
            fronts.stream().flatMap(front -> front.gaps().stream()))
        .flatMap(places -> places)
        .toList();
  }

  /** All places whose depth in one direction is looked at, scan frame [mm]. */
  List<Vec3> along() {
    return samples(true).toList();
  }

  private Stream<Vec3> samples(boolean directed) {
    return zones.stream()
        .flatMap(zone -> zone.samples().stream())
        .filter(sample -> (sample.towards() != null) == directed)
        .map(Zone.Sample::point);
  }

  /** The teeth that may carry a clasp, in rising order. */
  public SortedSet<Integer> abutments() {
    SortedSet<Integer> teeth = new TreeSet<>();
    terminals.forEach(site -> teeth.add(site.tooth()));
    return teeth;
  }
}
