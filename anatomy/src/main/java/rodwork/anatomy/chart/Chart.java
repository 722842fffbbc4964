package rodwork.anatomy.chart;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothEntry.Presence;

/**
 * The chart of one arch. Immutable.
 *
 * <p>Only what is missing is needed. A tooth that the chart does not name stands, except for third
 * molars: those are there only where the chart names them or the scan shows them.
 *
 * @param jaw the arch, upper or lower
 * @param teeth what is said of teeth; those without entry are not in it
 * @param places what is said of the soft tissue at the place of a tooth
 * @param freeEnds firmness of the tissue of free ends, by side
 * @param tori what is said of the tori of this jaw
 * @param allergies to materials, in the prescriber's words; empty: none is known, not "none"
 * @param allergiesAsked whether the patient was asked
 * @param openingMm how far the mouth opens, between the incisal edges or ridges; empty: not known
 * @param notJudged what is wanted or there that Rodwork does not judge
 * @param notes anything else, a line each
 */
public record Chart(
    Jaw jaw,
    SortedMap<ToothNumber, ToothEntry> teeth,
    SortedMap<ToothNumber, PlaceEntry> places,
    Map<Side, Firmness> freeEnds,
    Map<Torus.Site, Torus> tori,
    List<String> allergies,
    Answer allergiesAsked,
    OptionalDouble openingMm,
    Set<NotJudged> notJudged,
    List<String> notes) {

  /** No mouth opens wider [mm]. */
  public static final double WIDEST_OPENING_MM = 100;

  public Chart {
    if (jaw == Jaw.UNKNOWN) {
      throw new IllegalArgumentException("a chart is of the upper or the lower arch");
    }
    teeth = Collections.unmodifiableSortedMap(new TreeMap<>(teeth));
    places = Collections.unmodifiableSortedMap(new TreeMap<>(places));
    freeEnds = Map.copyOf(freeEnds);
    tori = Map.copyOf(tori);
    allergies = List.copyOf(allergies);
    notJudged = Set.copyOf(notJudged);
    notes = List.copyOf(notes);
    if (openingMm.isPresent()
        && !(openingMm.getAsDouble() >= 0 && openingMm.getAsDouble() <= WIDEST_OPENING_MM)) {
      throw new IllegalArgumentException(
          "an opening of "
              + openingMm.getAsDouble()
              + " mm; it lies from 0 to "
              + WIDEST_OPENING_MM
              + " mm");
    }
    requireJaw(jaw, teeth.keySet());
    requireJaw(jaw, places.keySet());
    for (Torus.Site site : tori.keySet()) {
      if (site.jaw() != jaw) {
        throw new IllegalArgumentException("a " + site.words() + " is not in this jaw");
      }
      tori.get(site)
          .misplaced(site)
          .ifPresent(
              wrong -> {
                throw new IllegalArgumentException(
                    "a "
                        + site.words()
                        + " "
                        + wrong.end()
                        + " "
                        + wrong.tooth()
                        + "; wanted is "
                        + wrong.wanted());
              });
    }
  }

  private static void requireJaw(Jaw jaw, Collection<ToothNumber> teeth) {
    for (ToothNumber tooth : teeth) {
      if (tooth.jaw() != jaw) {
        throw new IllegalArgumentException(
            "tooth " + tooth + " is not in the " + (jaw == Jaw.UPPER ? "upper" : "lower") + " jaw");
      }
    }
  }

  /** The chart on which nothing is written. */
  public static Chart blank(Jaw jaw) {
    return new Chart(
        jaw,
        new TreeMap<>(),
        new TreeMap<>(),
        Map.of(),
        Map.of(),
        List.of(),
        Answer.NOT_KNOWN,
        OptionalDouble.empty(),
        Set.of(),
        List.of());
  }

  /** The chart that names the missing teeth and nothing else. */
  public static Chart missing(Jaw jaw, Collection<ToothNumber> missing) {
    Chart chart = blank(jaw);
    for (ToothNumber tooth : missing) {
      chart = chart.with(tooth, ToothEntry.ABSENT);
    }
    return chart;
  }

  /** What is said of a tooth, or what holds where nothing is. */
  public ToothEntry tooth(ToothNumber tooth) {
    ToothEntry entry = teeth.get(tooth);
    return entry != null ? entry : tooth.isThirdMolar() ? ToothEntry.ABSENT : ToothEntry.PRESENT;
  }

  /** Whether the chart has an entry for a tooth. */
  public boolean names(ToothNumber tooth) {
    return teeth.containsKey(tooth);
  }

  public PlaceEntry place(ToothNumber tooth) {
    return places.getOrDefault(tooth, PlaceEntry.NOT_KNOWN);
  }

  public Firmness freeEnd(Side side) {
    return freeEnds.getOrDefault(side, Firmness.NOT_KNOWN);
  }

  public Torus torus(Torus.Site site) {
    return tori.getOrDefault(site, Torus.NOT_KNOWN);
  }

  /** The same chart with what is said of tori, beside what it says of the others. */
  public Chart withTori(Map<Torus.Site, Torus> said) {
    Map<Torus.Site, Torus> changed = new HashMap<>(tori);
    changed.putAll(said);
    return new Chart(
        jaw,
        teeth,
        places,
        freeEnds,
        changed,
        allergies,
        allergiesAsked,
        openingMm,
        notJudged,
        notes);
  }

  /** The same chart with another entry for one tooth. */
  public Chart with(ToothNumber tooth, ToothEntry entry) {
    SortedMap<ToothNumber, ToothEntry> changed = new TreeMap<>(teeth);
    changed.put(tooth, entry);
    return new Chart(
        jaw,
        changed,
        places,
        freeEnds,
        tori,
        allergies,
        allergiesAsked,
        openingMm,
        notJudged,
        notes);
  }

  /** The same chart with the entry of one tooth changed. */
  public Chart change(ToothNumber tooth, UnaryOperator<ToothEntry> change) {
    return with(tooth, change.apply(tooth(tooth)));
  }

  /** The same chart with another entry for one place. */
  public Chart with(ToothNumber tooth, PlaceEntry entry) {
    SortedMap<ToothNumber, PlaceEntry> changed = new TreeMap<>(places);
    changed.put(tooth, entry);
    return new Chart(
        jaw,
        teeth,
        changed,
        freeEnds,
        tori,
        allergies,
        allergiesAsked,
        openingMm,
        notJudged,
        notes);
  }

  /** Teeth that the chart names as missing now, planned extractions not among them. */
  public SortedSet<ToothNumber> missing() {
    return teeth.entrySet().stream()
        .filter(e -> e.getValue().presence() == Presence.MISSING)
        .map(Map.Entry::getKey)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Natural teeth that stand once the planned extractions are done. */
  public SortedSet<ToothNumber> standing() {
    return ToothNumber.allOf(jaw)
        .filter(tooth -> tooth(tooth).stands())
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
