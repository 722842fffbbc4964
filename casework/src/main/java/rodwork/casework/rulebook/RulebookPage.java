package rodwork.casework.rulebook;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;

/**
 * Everything that Rodwork decides by, to be read by a person: every formula, threshold, conflict,
 * rule, preference and material with unit, source and standing. Made from the rulebook's own text
 * and the formulas of the code, so that nothing on it can be out of date.
 *
 * @param title of the page
 * @param hash of the rulebook
 * @param sections in the order of the page
 */
public record RulebookPage(String title, String hash, List<Section> sections) {

  /**
   * A table with a heading.
   *
   * @param id stable name, for links
   * @param title its heading
   * @param intro a sentence or two
   * @param columns headings of the columns
   * @param rows as many cells each as there are columns; the first one of a rule is its id
   */
  public record Section(
      String id, String title, String intro, List<String> columns, List<List<String>> rows) {
    public Section {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
      for (List<String> row : rows) {
        if (row.size() != columns.size()) {
          throw new IllegalArgumentException(title + ": " + row + " under " + columns);
        }
      }
    }
  }

  private static final List<String> RULE_COLUMNS =
      List.of("rule", "wants", "otherwise", "because", "source", "standing");

  public RulebookPage {
    sections = List.copyOf(sections);
  }

  /** Of a rulebook. */
  public static RulebookPage of(Rulebook book) {
    Entry root = Entry.root(book.name(), YamlTree.of(book.name(), book.text()));
    ThresholdTable table = new ThresholdTable(book.name(), root.at("thresholds"), book.conflicts());
    List<Section> sections = new ArrayList<>();
    sections.add(standings());
    sections.addAll(formulas());
    root.at("thresholds")
        .fields()
        .forEach((group, entries) -> sections.add(thresholds(group, entries, table)));
    sections.add(conflicts(book, decided(root.at("thresholds"))));
    root.at("clause-sets")
        .fields()
        .forEach(
            (set, clauses) ->
                sections.add(
                    new Section(
                        "set-" + set,
                        "Rules: " + words(set),
                        "Shared by several kinds of clasps.",
                        RULE_COLUMNS,
                        clauses.items().stream().map(RulebookPage::clause).toList())));
    sections.add(families(root.at("families").items()));
    sections.add(ownClauses(root.at("families").items()));
    sections.add(preferences(root.at("preferences").items()));
    sections.add(materials(book));
    return new RulebookPage(book.title(), book.hash(), sections);
  }

  private static Section standings() {
    Map<Standing, String> means = new LinkedHashMap<>();
    for (Standing s : Standing.values()) {
      means.put(
          s,
          switch (s) {
            case PUBLISHED -> "seen in a primary published text";
            case TEACHING_TEXT -> "taught: seen in teaching material";
            case FROM_MEMORY -> "from memory of a text that was not looked up again";
            case COMMON_PRACTICE -> "what practitioners do; no published source is known";
            case OWN_CHOICE -> "chosen by Rodwork, for the reason given as source";
          });
    }
    return new Section(
        "standing",
        "How far a figure can be trusted",
        "Every number has one of these. A school or laboratory may change any of them in a copy of"
            + " the rulebook.",
        List.of("standing", "means"),
        means.entrySet().stream().map(e -> List.of(e.getKey().words(), e.getValue())).toList());
  }

  private static List<Section> formulas() {
    Set<String> groups =
        Formula.all().stream()
            .map(Formula::group)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return groups.stream()
        .map(
            group ->
                new Section(
                    "formulas-" + group.replace(' ', '-'),
                    "Formulas: " + group,
                    "",
                    List.of("formula", "", "unit", "means", "thresholds", "source", "standing"),
                    Formula.all().stream()
                        .filter(f -> f.group().equals(group))
                        .map(
                            f ->
                                List.of(
                                    f.name(),
                                    f.text(),
                                    unit(f.unit()),
                                    f.means(),
                                    String.join(", ", f.uses()),
                                    f.source(),
                                    f.standing().words()))
                        .toList()))
        .toList();
  }

  private static Section thresholds(String group, Entry entries, ThresholdTable table) {
    List<List<String>> rows = new ArrayList<>();
    entries
        .fields()
        .forEach(
            (id, e) -> {
              Threshold t = table.get(id, e.at("unit").text());
              Entry decided = e.find("decided-by");
              rows.add(
                  List.of(
                      id,
                      number(t.value()),
                      unit(t.unit()),
                      t.source() + (decided == null ? "" : " (conflict " + decided.text() + ")"),
                      t.standing().words()));
            });
    return new Section(
        "thresholds-" + group,
        "Thresholds: " + words(group),
        "",
        List.of("threshold", "value", "unit", "source", "standing"),
        rows);
  }

  /** The thresholds that follow a conflict, by its id. */
  private static Map<String, List<String>> decided(Entry groups) {
    Map<String, List<String>> decided = new HashMap<>();
    groups
        .fields()
        .forEach(
            (_, group) ->
                group
                    .fields()
                    .forEach(
                        (id, e) -> {
                          Entry by = e.find("decided-by");
                          if (by != null) {
                            decided.computeIfAbsent(by.text(), _ -> new ArrayList<>()).add(id);
                          }
                        }));
    return decided;
  }

  private static Section conflicts(Rulebook book, Map<String, List<String>> decided) {
    List<List<String>> rows = new ArrayList<>();
    for (Conflict c : book.conflicts()) {
      for (Conflict.Side s : c.sides()) {
        boolean taken = s.id().equals(c.taken());
        rows.add(
            List.of(
                c.id(),
                c.topic(),
                s.id() + (taken ? " (taken: " + c.because() + ")" : ""),
                decided.containsKey(c.id())
                    ? String.join(", ", decided.get(c.id()))
                    : "nothing: it is told only",
                Double.isNaN(s.value()) ? "in words" : number(s.value()) + " " + c.unit(),
                s.source(),
                s.standing().words()));
      }
    }
    return new Section(
        "conflicts",
        "Where sources disagree",
        "Each side with its source; the one that Rodwork takes, and why.",
        List.of("conflict", "topic", "side", "decides", "value", "source", "standing"),
        rows);
  }

  private static List<String> clause(Entry e) {
    Entry when = e.find("when");
    return List.of(
        e.at("id").text(),
        (when == null ? "" : "where " + conditions(when) + ": ") + conditions(e.at("wants")),
        otherwise(e.at("otherwise")),
        e.at("because").text(),
        optional(e, "source", "that of the threshold"),
        optional(e, "standing", "that of the threshold"));
  }

  private static String optional(Entry e, String field, String absent) {
    Entry found = e.find(field);
    return found == null ? absent : found.text();
  }

  private static String otherwise(Entry e) {
    Entry change = e.find("change");
    if (change != null) {
      return change.text() + ", where that reaches at most " + e.at("at-most").text();
    }
    Entry prepare = e.find("prepare");
    if (prepare == null) {
      return e.text();
    }
    return "prepare: "
        + prepare.text()
        + ", at most "
        + e.at("at-most").text()
        + (e.find("else") == null ? "" : "; else warns");
  }

  private static String conditions(Entry e) {
    return e.fields().entrySet().stream()
        .map(fact -> words(fact.getKey()) + " " + condition(fact.getValue()))
        .collect(Collectors.joining(" and "));
  }

  private static String condition(Entry e) {
    return e.fields().entrySet().stream()
        .map(c -> words(c.getKey()) + " " + String.join(" or ", c.getValue().words()))
        .collect(Collectors.joining(" and "));
  }

  private static Section families(List<Entry> families) {
    return new Section(
        "families",
        "Kinds of clasps",
        "Near is the side of the space, far the other side. The sets of rules that each must meet"
            + " stand above, its own below.",
        List.of("kind", "id", "tip", "gauge", "arm", "against it", "material", "sets of rules"),
        families.stream()
            .map(
                f ->
                    List.of(
                        f.at("name").text(),
                        f.at("id").text(),
                        f.at("tip").at("surface").text()
                            + ", "
                            + String.join(" or ", f.at("tip").at("at").words()),
                        f.at("tip").at("gauge").text(),
                        f.at("arm").text() + " from " + f.at("origin").text(),
                        f.at("opposing").text(),
                        f.at("material").text(),
                        String.join(", ", f.at("uses").words())))
            .toList());
  }

  private static Section ownClauses(List<Entry> families) {
    List<List<String>> rows = new ArrayList<>();
    for (Entry family : families) {
      for (Entry c : family.at("clauses").items()) {
        rows.add(clause(c));
      }
    }
    return new Section(
        "own-rules",
        "Rules of one kind of clasp",
        "Those that only one kind must meet.",
        RULE_COLUMNS,
        rows);
  }

  private static Section preferences(List<Entry> preferences) {
    return new Section(
        "preferences",
        "Order among clasps that serve",
        "The first that applies weighs more than all later ones.",
        List.of(
            "preference", "where", "first", "last", "last resort", "because", "source", "standing"),
        preferences.stream()
            .map(
                p ->
                    List.of(
                        p.at("id").text(),
                        p.find("when") == null ? "always" : conditions(p.at("when")),
                        list(p, "first"),
                        list(p, "last"),
                        list(p, "last-resort"),
                        p.at("because").text(),
                        p.at("source").text(),
                        p.at("standing").text()))
            .toList());
  }

  private static String list(Entry e, String field) {
    Entry found = e.find(field);
    return found == null ? "–" : String.join(", ", found.words());
  }

  private static Section materials(Rulebook book) {
    return new Section(
        "materials",
        "Materials of arms",
        "Ranges, never one confident number.",
        List.of(
            "material",
            "id",
            "modulus [GPa]",
            "proof stress [MPa]",
            "cautions",
            "source",
            "standing"),
        book.materials().stream()
            .map(
                m ->
                    List.of(
                        m.name(),
                        m.id(),
                        number(m.modulusGpa().from()) + "–" + number(m.modulusGpa().to()),
                        number(m.proofMpa().from()) + "–" + number(m.proofMpa().to()),
                        String.join("; ", m.cautions()),
                        m.source(),
                        m.standing().words()))
            .toList());
  }

  private static String words(String id) {
    return id.replace('-', ' ');
  }

  private static String unit(String unit) {
    return unit.equals("1") ? "–" : unit;
  }

  /** As a person writes it: no digits that say nothing. */
  private static String number(double value) {
    return BigDecimal.valueOf(value).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }
}
