package rodwork.anatomy.kennedy;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothNumber;

/**
 * What the classes are told of an arch: each set names places of one jaw.
 *
 * @param jaw upper or lower
 * @param standing teeth after planned extractions, implants among them
 * @param extracted those that still stand and will be gone
 * @param answers what a person said, by kind of question; a place not named is not known
 */
public record ArchState(
    Jaw jaw,
    SortedSet<ToothNumber> standing,
    SortedSet<ToothNumber> extracted,
    Map<Ask, Map<ToothNumber, Boolean>> answers) {

  /** What a person is asked about a place. */
  public enum Ask {
    /** Whether a standing third molar is an abutment. */
    ABUTMENT(false),
    /** Whether a missing second or third molar is replaced. */
    REPLACED(true),
    /** Whether the space of a missing tooth has closed to less than 2 mm. */
    CLOSED(false);

    private final boolean assumed;

    Ask(boolean assumed) {
      this.assumed = assumed;
    }
  }

  public ArchState {
    if (jaw == Jaw.UNKNOWN) {
      throw new IllegalArgumentException("a class needs to know upper or lower");
    }
    standing = Collections.unmodifiableSortedSet(new TreeSet<>(standing));
    extracted = Collections.unmodifiableSortedSet(new TreeSet<>(extracted));
    Map<Ask, Map<ToothNumber, Boolean>> copy = new EnumMap<>(Ask.class);
    answers.forEach((ask, places) -> copy.put(ask, Map.copyOf(places)));
    answers = Collections.unmodifiableMap(copy);
    for (Set<ToothNumber> set : List.of(standing, extracted)) {
      for (ToothNumber tooth : set) {
        if (tooth.jaw() != jaw) {
          throw new IllegalArgumentException("tooth " + tooth + " is in the other jaw");
        }
      }
    }
  }

  /** Teeth that stand, and nothing else known. */
  public static ArchState of(Jaw jaw, Set<ToothNumber> standing) {
    return new ArchState(jaw, new TreeSet<>(standing), new TreeSet<>(), Map.of());
  }

  /** What a chart says alone, without a scan. */
  public static ArchState of(Chart chart) {
    ArchState state = of(chart.jaw(), chart.standing());
    TreeSet<ToothNumber> extracted = new TreeSet<>();
    TreeSet<ToothNumber> standing = new TreeSet<>(state.standing);
    for (Map.Entry<ToothNumber, ToothEntry> each : chart.teeth().entrySet()) {
      ToothNumber tooth = each.getKey();
      ToothEntry entry = each.getValue();
      if (entry.presence() == Presence.TO_BE_EXTRACTED) {
        extracted.add(tooth);
      } else if (entry.presence() == Presence.IMPLANT) {
        standing.add(tooth);
      }
    }
    return new ArchState(chart.jaw(), standing, extracted, Map.of()).withAnswersOf(chart);
  }

  /** The same arch with what a chart says of abutments, replacement and closed spaces. */
  public ArchState withAnswersOf(Chart chart) {
    ArchState state = this;
    for (Map.Entry<ToothNumber, ToothEntry> each : chart.teeth().entrySet()) {
      ToothEntry entry = each.getValue();
      state = state.with(Ask.ABUTMENT, each.getKey(), entry.abutment());
      state = state.with(Ask.REPLACED, each.getKey(), entry.replace());
      state = state.with(Ask.CLOSED, each.getKey(), entry.spaceClosed());
    }
    return state;
  }

  /** The same arch with one more answer; "not known" changes nothing. */
  public ArchState with(Ask ask, ToothNumber tooth, Answer answer) {
    if (!answer.known()) {
      return this;
    }
    Map<Ask, Map<ToothNumber, Boolean>> changed = new EnumMap<>(Ask.class);
    changed.putAll(answers);
    Map<ToothNumber, Boolean> places = new TreeMap<>(answers(ask));
    places.put(tooth, answer == Answer.YES);
    changed.put(ask, places);
    return new ArchState(jaw, standing, extracted, changed);
  }

  boolean known(Ask ask, ToothNumber tooth) {
    return answers(ask).containsKey(tooth);
  }

  /** The answer, or what is assumed without one. A third molar is replaced only on request. */
  boolean answer(Ask ask, ToothNumber tooth) {
    boolean assumed = ask.assumed && !(ask == Ask.REPLACED && tooth.isThirdMolar());
    return answers(ask).getOrDefault(tooth, assumed);
  }

  private Map<ToothNumber, Boolean> answers(Ask ask) {
    return answers.getOrDefault(ask, Map.of());
  }
}
