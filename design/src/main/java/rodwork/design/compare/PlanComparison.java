package rodwork.design.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.load.LoadComparison;
import rodwork.design.plan.Plan;
import rodwork.rules.Finding;
import rodwork.rules.Verdict;
import rodwork.rules.Wording;

/**
 * What differs between two plans of one mouth at one path. Nothing is summed up into a score.
 *
 * @param parts that only one has, or that are of another kind
 * @param measures of parts that both have, where they differ
 * @param findings rules whose answer differs, or that only one plan is asked
 * @param firstOpen questions that only the first leaves open
 * @param otherOpen questions that only the other leaves open
 * @param loads what a bite on each base does, as ratios
 */
public record PlanComparison(
    List<PartChange> parts,
    List<MeasureChange> measures,
    List<FindingChange> findings,
    List<Wording> firstOpen,
    List<Wording> otherOpen,
    LoadComparison loads) {

  /**
   * Parts at one place.
   *
   * @param kind what they are
   * @param tooth that they belong to; empty for the connector
   * @param first of the first plan, in words; empty: none
   * @param other of the other plan
   */
  public record PartChange(
      PartList.Kind kind, Optional<ToothNumber> tooth, List<String> first, List<String> other) {
    public PartChange {
      first = List.copyOf(first);
      other = List.copyOf(other);
    }
  }

  /**
   * A measure of a part that both plans have.
   *
   * @param what is measured
   * @param unit of both; {@code 1} for a plain number
   */
  public record MeasureChange(
      PartList.Kind kind,
      Optional<ToothNumber> tooth,
      String what,
      String unit,
      double first,
      double other) {}

  /** How a rule's answer changes. */
  public enum Turn {
    /** The other plan meets what the first does not. */
    GAINED("gained"),
    /** The other plan does not meet what the first meets. */
    LOST("lost"),
    /** Another answer, and neither of the above. */
    CHANGED("changed"),
    /** Only the first plan is asked. */
    ONLY_FIRST("only in the first"),
    /** Only the other plan is asked. */
    ONLY_OTHER("only in the other");

    private final String words;

    Turn(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A rule at one place.
   *
   * @param first as it stands in the first plan; empty: not asked there
   * @param other as it stands in the other
   */
  public record FindingChange(Turn turn, Optional<Finding> first, Optional<Finding> other) {
    /** The finding itself, of the plan that has it. */
    public Finding either() {
      return first.or(() -> other).orElseThrow();
    }
  }

  public PlanComparison {
    parts = List.copyOf(parts);
    measures = List.copyOf(measures);
    findings = List.copyOf(findings);
    firstOpen = List.copyOf(firstOpen);
    otherOpen = List.copyOf(otherOpen);
  }

  /**
   * Compares.
   *
   * @param loads of the same two plans, in the same order
   */
  public static PlanComparison of(Plan first, Plan other, LoadComparison loads) {
    PartList a = PartList.of(first);
    PartList b = PartList.of(other);
    List<PartChange> parts = new ArrayList<>();
    Set<PartList.At> places = new LinkedHashSet<>(a.parts().keySet());
    places.addAll(b.parts().keySet());
    places.stream()
        .sorted()
        .forEach(
            at -> {
              List<String> x = a.parts().getOrDefault(at, List.of());
              List<String> y = b.parts().getOrDefault(at, List.of());
              if (!x.equals(y)) {
                parts.add(new PartChange(at.kind(), at.tooth(), x, y));
              }
            });
    List<MeasureChange> measures = new ArrayList<>();
    a.measures()
        .forEach(
            (of, x) -> {
              PartList.Measured y = b.measures().get(of);
              if (y != null && x.differs(y)) {
                measures.add(
                    new MeasureChange(
                        of.at().kind(),
                        of.at().tooth(),
                        of.what(),
                        x.unit(),
                        x.value(),
                        y.value()));
              }
            });
    return new PlanComparison(
        parts,
        measures,
        findings(first.findings(), other.findings()),
        first.questions().stream().filter(q -> !other.questions().contains(q)).toList(),
        other.questions().stream().filter(q -> !first.questions().contains(q)).toList(),
        loads);
  }

  /** A rule at a place; the count tells several of one name apart. */
  private record Asked(String rule, String what, String place, int count) {}

  private static Map<Asked, Finding> asked(List<Finding> findings) {
    Map<Asked, Finding> asked = new LinkedHashMap<>();
    for (Finding f : findings) {
      int count = 0;
      while (asked.putIfAbsent(new Asked(f.rule(), f.what(), f.place().words(), count), f)
          != null) {
        count++;
      }
    }
    return asked;
  }

  private static List<FindingChange> findings(List<Finding> first, List<Finding> other) {
    Map<Asked, Finding> a = asked(first);
    Map<Asked, Finding> b = asked(other);
    List<FindingChange> changes = new ArrayList<>();
    a.forEach(
        (what, x) -> {
          Finding y = b.get(what);
          if (y == null) {
            changes.add(new FindingChange(Turn.ONLY_FIRST, Optional.of(x), Optional.empty()));
          } else if (x.verdict() != y.verdict()) {
            Turn turn =
                y.verdict() == Verdict.MET
                    ? Turn.GAINED
                    : x.verdict() == Verdict.MET ? Turn.LOST : Turn.CHANGED;
            changes.add(new FindingChange(turn, Optional.of(x), Optional.of(y)));
          }
        });
    b.forEach(
        (what, y) -> {
          if (!a.containsKey(what)) {
            changes.add(new FindingChange(Turn.ONLY_OTHER, Optional.empty(), Optional.of(y)));
          }
        });
    return changes;
  }
}
