package rodwork.casework.rulebook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.ClaspBook;
import rodwork.design.clasp.Clause;
import rodwork.design.clasp.Condition;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Preference;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;

/** Turns clause sets, families and preferences of a rulebook into their records. */
final class ClaspReader {
  private final ThresholdTable thresholds;
  private final List<ArmMaterial> materials;
  private final Map<String, List<Clause>> sets = new HashMap<>();
  private final Set<String> families = new HashSet<>();

  ClaspReader(ThresholdTable thresholds, List<ArmMaterial> materials) {
    this.thresholds = thresholds;
    this.materials = materials;
  }

  ClaspBook read(Entry root) {
    root.at("clause-sets").fields().forEach((name, set) -> sets.put(name, clauses(set)));
    List<Family> all = root.at("families").items().stream().map(this::family).toList();
    List<Preference> preferences =
        root.at("preferences").items().stream().map(this::preference).toList();
    return new ClaspBook(all, preferences, thresholds.get("gauge-fits", "mm"));
  }

  private Family family(Entry e) {
    Entry tip = e.at("tip");
    List<Clause> clauses = new ArrayList<>();
    for (Entry use : e.at("uses").items()) {
      List<Clause> set = sets.get(use.text());
      if (set == null) {
        throw use.wrong("there is no clause set \"" + use.text() + "\"");
      }
      clauses.addAll(set);
    }
    clauses.addAll(clauses(e.at("clauses")));
    Set<String> ids = new HashSet<>();
    for (Clause c : clauses) {
      if (!ids.add(c.id())) {
        throw e.wrong("the clause \"" + c.id() + "\" occurs twice");
      }
    }
    Entry material = e.at("material");
    if (materials.stream().noneMatch(m -> m.id().equals(material.text()))) {
      throw material.wrong("there is no material \"" + material.text() + "\"");
    }
    String id = e.at("id").text();
    if (!families.add(id)) {
      throw e.at("id").wrong("the family \"" + id + "\" stands in the rulebook already");
    }
    return new Family(
        id,
        e.at("name").text(),
        tip.at("surface").text().equals("facial") ? Surface.FACIAL : Surface.LINGUAL,
        tip.at("at").items().stream().map(ClaspReader::spot).toList(),
        millimetres(tip.at("gauge")),
        spot(e.at("origin")),
        e.at("arm").make(() -> Family.ArmShape.valueOf(constant(e.at("arm").text()))),
        runs(e.find("runs")),
        rests(e.find("rests")),
        e.at("opposing").make(() -> Family.Opposing.valueOf(constant(e.at("opposing").text()))),
        material.text(),
        millimetres(tip.at("deepen-at-most")),
        clauses);
  }

  private static Family.Runs runs(@Nullable Entry e) {
    return e == null
        ? Family.Runs.ABOVE_THE_LINE
        : e.make(() -> Family.Runs.valueOf(constant(e.text())));
  }

  private static Set<Family.RestAt> rests(@Nullable Entry e) {
    return e == null
        ? Set.of()
        : e.items().stream()
            .map(one -> one.make(() -> Family.RestAt.valueOf(constant(one.text()))))
            .collect(Collectors.toSet());
  }

  private static AbutmentFacts.Spot spot(Entry e) {
    return e.make(() -> AbutmentFacts.Spot.valueOf(constant(e.text())));
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
  }

  private Threshold millimetres(Entry e) {
    Threshold t = thresholds.named(e);
    if (!t.unit().equals("mm")) {
      throw e.wrong("it is in " + t.unit() + ", not in mm");
    }
    return t;
  }

  private List<Clause> clauses(Entry list) {
    List<Clause> clauses = new ArrayList<>();
    for (Entry e : list.items()) {
      Entry wants = e.at("wants");
      List<Condition> wanted = conditions(wants);
      if (wanted.size() != 1) {
        throw wants.wrong("a clause wants one fact, not " + wanted.size());
      }
      Condition condition = wanted.getFirst();
      Threshold t = thresholdOf(condition);
      Entry when = e.find("when");
      Clause clause =
          new Clause(
              e.at("id").text(),
              when == null ? List.of() : conditions(when),
              condition,
              consequence(e.at("otherwise")),
              e.at("because").text(),
              source(e, t),
              standing(e, t));
      if (!e.at("otherwise").text().equals("off")) {
        clauses.add(clause);
      }
    }
    return clauses;
  }

  private static @Nullable Threshold thresholdOf(Condition condition) {
    return switch (condition) {
      case Condition.AtLeast c -> c.threshold();
      case Condition.AtMost c -> c.threshold();
      case Condition.Is _, Condition.AtLeastFact _ -> null;
    };
  }

  private static String source(Entry e, @Nullable Threshold t) {
    Entry own = e.find("source");
    return own != null || t == null ? e.at("source").text() : t.source();
  }

  private static Standing standing(Entry e, @Nullable Threshold t) {
    Entry own = e.find("standing");
    return own != null || t == null ? e.at("standing").standing() : t.standing();
  }

  private Clause.Consequence consequence(Entry e) {
    return switch (e.text()) {
      case "rules out", "off" -> new Clause.Consequence.RulesOut();
      case "warns" -> new Clause.Consequence.Warns();
      case "shows" -> new Clause.Consequence.Shows();
      default -> {
        Entry change = e.find("change");
        if (change != null) {
          Fact by = fact(e.at("by"), e.at("by").text());
          Threshold most = thresholds.named(e.at("at-most"));
          if (!most.unit().equals(by.unit())) {
            throw e.at("at-most").wrong("it is in " + most.unit() + ", not in " + by.unit());
          }
          yield new Clause.Consequence.Changes(change.text(), by, most);
        }
        Entry by = e.find("by");
        yield new Clause.Consequence.Prepares(
            e.at("prepare").text(),
            by == null ? Optional.empty() : Optional.of(fact(by, by.text())),
            millimetres(e.at("at-most")),
            e.find("else") != null);
      }
    };
  }

  private List<Condition> conditions(Entry e) {
    List<Condition> conditions = new ArrayList<>();
    e.fields()
        .forEach(
            (name, test) ->
                test.fields()
                    .forEach(
                        (kind, value) ->
                            conditions.add(
                                value.make(() -> condition(fact(test, name), kind, value)))));
    return conditions;
  }

  private Condition condition(Fact fact, String kind, Entry value) {
    return switch (kind) {
      case "is" -> new Condition.Is(fact, value.words());
      case "at-least" -> new Condition.AtLeast(fact, thresholds.named(value));
      case "at-most" -> new Condition.AtMost(fact, thresholds.named(value));
      case "at-least-fact" -> new Condition.AtLeastFact(fact, fact(value, value.text()));
      default -> throw value.wrong("\"" + kind + "\" is no test");
    };
  }

  private static Fact fact(Entry e, String name) {
    return Fact.named(name).orElseThrow(() -> e.wrong("there is no fact \"" + name + "\""));
  }

  private Preference preference(Entry e) {
    Entry when = e.find("when");
    return new Preference(
        e.at("id").text(),
        when == null ? List.of() : conditions(when),
        known(e.find("first")),
        known(e.find("last")),
        known(e.find("last-resort")),
        e.at("because").text(),
        e.at("source").text(),
        e.at("standing").standing());
  }

  private List<String> known(@Nullable Entry list) {
    if (list == null) {
      return List.of();
    }
    for (Entry e : list.items()) {
      if (!families.contains(e.text())) {
        throw e.wrong("there is no family \"" + e.text() + "\"");
      }
    }
    return list.words();
  }
}
