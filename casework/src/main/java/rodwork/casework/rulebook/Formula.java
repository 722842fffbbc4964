package rodwork.casework.rulebook;

import java.util.List;
import rodwork.rules.Standing;

/**
 * A formula that the program measures or judges by, for a person to look up.
 *
 * @param id stable name
 * @param name in the trade's words
 * @param group what it belongs to
 * @param unit of its result; {@code 1} for a plain number
 * @param code class that does it, as module and path: {@code survey/path/Guiding}
 * @param says the formula, word for word as in the documentation of that class
 * @param means its letters, and what it is for
 * @param source where it comes from
 * @param standing how far that can be trusted
 * @param uses ids of thresholds that go into it
 */
public record Formula(
    String id,
    String name,
    String group,
    String unit,
    String code,
    String says,
    String means,
    String source,
    Standing standing,
    List<String> uses) {
  private static final class Shipped {
    static final List<Formula> ALL = read();
  }

  public Formula {
    uses = List.copyOf(uses);
  }

  /** All of them, in the order of the job. */
  public static List<Formula> all() {
    return Shipped.ALL;
  }

  private static List<Formula> read() {
    String name = "formulas.yaml";
    return Entry.root(name, YamlTree.of(name, Resources.text(name))).at("formulas").items().stream()
        .map(
            e ->
                new Formula(
                    e.at("id").text(),
                    e.at("name").text(),
                    e.at("group").text(),
                    e.at("unit").text(),
                    e.at("class").text(),
                    e.at("says").text(),
                    e.at("means").text(),
                    e.at("source").text(),
                    e.at("standing").standing(),
                    e.at("uses").items().stream().map(Entry::text).toList()))
        .toList();
  }

  /** What it says, without marks of the code's own documentation. */
  public String text() {
    return says.replace("{@code ", "").replace("}", closing(says));
  }

  /** A brace that belongs to the formula stays. */
  private static String closing(String says) {
    return says.contains("{@code ") ? "" : "}";
  }
}
