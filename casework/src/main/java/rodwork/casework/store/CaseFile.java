package rodwork.casework.store;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.Jaw;

/**
 * A case as it stands. Immutable: a change in the store gives another one.
 *
 * @param code what it is called
 * @param now the state that holds
 * @param tip the newest state that redo leads to; that of {@code now} where nothing was undone
 */
public record CaseFile(CaseCode code, Revision now, int tip) {
  public boolean canUndo() {
    return now.parent() != null;
  }

  public boolean canRedo() {
    return tip != now.number();
  }

  /** Parts of one kind, in the order of their names. */
  public List<Map.Entry<PartName, Part>> parts(PartKind kind) {
    return now.parts().entrySet().stream().filter(e -> e.getKey().kind() == kind).toList();
  }

  /** The only part of a kind for a jaw, or the first of them. */
  public Optional<Map.Entry<PartName, Part>> part(PartKind kind, Jaw jaw) {
    return parts(kind).stream().filter(e -> e.getKey().jaw() == jaw).findFirst();
  }

  /** The jaws that some part belongs to, upper first. */
  public List<Jaw> jaws() {
    return now.parts().keySet().stream()
        .map(PartName::jaw)
        .filter(jaw -> jaw != Jaw.UNKNOWN)
        .distinct()
        .sorted()
        .toList();
  }
}
