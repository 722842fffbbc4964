package rodwork.design.clasp;

import java.util.List;
import rodwork.rules.Standing;

/**
 * An order among families where some conditions hold. Earlier preferences weigh more than all later
 * ones together.
 *
 * @param id stable name
 * @param when all of these must hold; empty for always
 * @param first families in order, ids; those that are not named come after all that are
 * @param last families that come after all others that can do as much, ids
 * @param lastResort families that come after every other that is not ruled out, ids
 * @param because one sentence for a person
 */
public record Preference(
    String id,
    List<Condition> when,
    List<String> first,
    List<String> last,
    List<String> lastResort,
    String because,
    String source,
    Standing standing) {
  public Preference {
    when = List.copyOf(when);
    first = List.copyOf(first);
    last = List.copyOf(last);
    lastResort = List.copyOf(lastResort);
  }

  /** Lower is better. */
  int rank(Family family) {
    int at = first.indexOf(family.id());
    if (at >= 0) {
      return at;
    }
    return last.contains(family.id()) ? first.size() + 1 : first.size();
  }

  boolean names(Family family) {
    return first.contains(family.id())
        || last.contains(family.id())
        || lastResort.contains(family.id());
  }
}
