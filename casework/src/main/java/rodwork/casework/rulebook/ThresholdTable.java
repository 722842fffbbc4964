package rodwork.casework.rulebook;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/** All thresholds of a rulebook by id; knows which were asked for. */
final class ThresholdTable implements Thresholds {
  private final String file;
  private final Map<String, Threshold> thresholds = new LinkedHashMap<>();
  private final Map<String, Entry> entries = new HashMap<>();
  private final Set<String> asked = new HashSet<>();

  ThresholdTable(String file, Entry groups, List<Conflict> conflicts) {
    this.file = file;
    groups
        .fields()
        .forEach((_, group) -> group.fields().forEach((id, entry) -> add(id, entry, conflicts)));
  }

  private void add(String id, Entry entry, List<Conflict> conflicts) {
    Threshold t = entry.make(() -> threshold(id, entry, conflicts));
    Entry before = entries.put(id, entry);
    if (before != null) {
      throw entry.wrong("\"" + id + "\" stands in line " + before.line() + " already");
    }
    thresholds.put(id, t);
  }

  private static Threshold threshold(String id, Entry entry, List<Conflict> conflicts) {
    String unit = entry.at("unit").text();
    Entry decidedBy = entry.find("decided-by");
    if (decidedBy == null) {
      return new Threshold(
          id,
          entry.at("value").number(),
          unit,
          entry.at("source").text(),
          entry.at("standing").standing());
    }
    Conflict conflict =
        conflicts.stream()
            .filter(c -> c.id().equals(decidedBy.text()))
            .findFirst()
            .orElseThrow(
                () -> decidedBy.wrong("no conflict is called \"" + decidedBy.text() + "\""));
    if (!conflict.unit().equals(unit)) {
      throw decidedBy.wrong("the conflict is in " + conflict.unit() + ", this in " + unit);
    }
    Conflict.Side side = conflict.side();
    return new Threshold(id, side.value(), unit, side.source(), side.standing());
  }

  @Override
  public Threshold get(String id, String unit) {
    Threshold t = thresholds.get(id);
    Entry entry = entries.get(id);
    if (t == null || entry == null) {
      throw RulebookProblem.MISSING.with(file, id, unit);
    }
    if (!t.unit().equals(unit)) {
      throw entry.at("unit").wrong("it is asked for in " + unit + ", not in " + t.unit());
    }
    asked.add(id);
    return t;
  }

  /** The threshold that an entry names. */
  Threshold named(Entry entry) {
    Threshold t = thresholds.get(entry.text());
    if (t == null) {
      throw entry.wrong("there is no threshold \"" + entry.text() + "\"");
    }
    asked.add(t.id());
    return t;
  }

  /** Refuses thresholds that nothing asked for: a misspelt one would have no effect. */
  void refuseUnused() {
    thresholds.forEach(
        (id, _) -> {
          Entry entry = entries.get(id);
          if (!asked.contains(id) && entry != null) {
            throw RulebookProblem.UNUSED.with(file, entry.line(), id);
          }
        });
  }
}
