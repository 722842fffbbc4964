package rodwork.app.operation;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;

/**
 * One jaw of a case.
 *
 * @param jaw which
 * @param scan its scan
 * @param content of the scan file
 */
public record CaseCast(Jaw jaw, Map.Entry<PartName, Part> scan, byte[] content) {
  /** Where a case keeps the rulebook that it goes by. */
  public static final PartName RULEBOOK =
      new PartName(PartKind.RULEBOOK, Jaw.UNKNOWN, "rulebook.yaml");

  /**
   * The cast of a case.
   *
   * @param wanted upper, lower, or unknown where the case has one scan only
   */
  public static CaseCast of(CaseStore store, CaseFile file, Jaw wanted) {
    List<Map.Entry<PartName, Part>> scans =
        file.parts(PartKind.SCAN).stream()
            .filter(scan -> wanted == Jaw.UNKNOWN || scan.getKey().jaw() == wanted)
            .toList();
    if (scans.size() != 1) {
      throw AppRefusal.CASE_NEEDS_SCAN.with(file.code(), scans.size());
    }
    Map.Entry<PartName, Part> scan = scans.getFirst();
    return new CaseCast(scan.getKey().jaw(), scan, store.read(scan.getValue()));
  }

  /** The text of a part of the case. */
  public static Optional<String> text(CaseStore store, CaseFile file, PartKind kind, Jaw jaw) {
    return file.part(kind, jaw)
        .map(part -> new String(store.read(part.getValue()), StandardCharsets.UTF_8));
  }

  /** The rulebook that the case goes by. */
  public static Rulebook rulebook(CaseStore store, CaseFile file) {
    return file.part(PartKind.RULEBOOK, Jaw.UNKNOWN)
        .map(
            part ->
                Rulebook.of(
                    file.code() + ": " + part.getKey().label(),
                    new String(store.read(part.getValue()), StandardCharsets.UTF_8)))
        .orElseGet(Rulebook::shipped);
  }
}
