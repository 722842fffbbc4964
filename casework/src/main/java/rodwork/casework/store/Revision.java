package rodwork.casework.store;

import java.time.Instant;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One state of a case. Immutable, and kept for good.
 *
 * @param number 1 for the first, rising by 1
 * @param parent the state it came from; null for the first
 * @param at when it was saved
 * @param action what was done, in a few words
 * @param parts what the case consists of
 */
public record Revision(
    int number,
    @Nullable Integer parent,
    Instant at,
    String action,
    SortedMap<PartName, Part> parts) {
  static final int LONGEST_ACTION = 200;

  public Revision {
    parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
    if (action.length() > LONGEST_ACTION) {
      action = action.substring(0, LONGEST_ACTION);
    }
  }
}
