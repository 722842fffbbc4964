package rodwork.casework.store;

import java.util.Collections;
import java.util.HashSet;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a change does to the parts of a case. Immutable; start from {@link #NONE}.
 *
 * @param puts parts that are new or have new content; the arrays must not be changed afterwards
 * @param drops parts that are no longer there
 */
public record CaseEdit(SortedMap<PartName, byte[]> puts, Set<PartName> drops) {
  public static final CaseEdit NONE = new CaseEdit(new TreeMap<>(), Set.of());

  public CaseEdit {
    puts = Collections.unmodifiableSortedMap(new TreeMap<>(puts));
    drops = Set.copyOf(drops);
  }

  public CaseEdit put(PartName name, byte[] content) {
    SortedMap<PartName, byte[]> more = new TreeMap<>(puts);
    more.put(name, content);
    return new CaseEdit(more, drops);
  }

  public CaseEdit drop(PartName name) {
    Set<PartName> more = new HashSet<>(drops);
    more.add(name);
    return new CaseEdit(puts, more);
  }

  /** A part that is not dropped after all. */
  public CaseEdit keep(PartName name) {
    Set<PartName> less = new HashSet<>(drops);
    less.remove(name);
    return new CaseEdit(puts, less);
  }

  SortedMap<PartName, Part> on(SortedMap<PartName, Part> parts) {
    SortedMap<PartName, Part> changed = new TreeMap<>(parts);
    changed.keySet().removeAll(drops);
    puts.forEach((name, bytes) -> changed.put(name, Part.of(bytes)));
    return changed;
  }
}
