package rodwork.app.report;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.Revision;

/** Cases as lines for a person. */
public final class CaseTable {
  private CaseTable() {}

  /** One line a case. */
  public static List<String> list(List<CaseFile> cases) {
    List<String> lines = new ArrayList<>();
    lines.add(String.format("%-24s %-12s %6s %6s  %s", "case", "jaws", "scans", "state", "saved"));
    for (CaseFile one : cases) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%-24s %-12s %6d %6d  %s  %s",
              one.code(),
              String.join(" ", one.jaws().stream().map(Words::jaw).toList()),
              one.parts(PartKind.SCAN).size(),
              one.now().number(),
              time(one.now()),
              one.now().action()));
    }
    return lines;
  }

  /** The case and its parts. */
  public static List<String> of(CaseFile one) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "Case %s, state %d of %s: %s",
            one.code(),
            one.now().number(),
            time(one.now()),
            one.now().action()));
    one.now()
        .parts()
        .forEach(
            (name, part) ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "  %-44s %,12d bytes  sha256 %s…",
                        name,
                        part.size(),
                        part.hash().substring(0, 12))));
    return lines;
  }

  /** Every state, oldest first; {@code >} marks the one that holds. */
  public static List<String> history(CaseFile one, List<Revision> history) {
    List<String> lines = new ArrayList<>();
    lines.add("History:");
    for (Revision revision : history) {
      Integer parent = revision.parent();
      boolean follows = parent == null || parent == revision.number() - 1;
      lines.add(
          String.format(
              Locale.ROOT,
              "%s %4d  %s  %s%s",
              revision.number() == one.now().number() ? ">" : " ",
              revision.number(),
              time(revision),
              revision.action(),
              follows ? "" : " (after " + parent + ")"));
    }
    return lines;
  }

  private static String time(Revision revision) {
    return revision.at().truncatedTo(ChronoUnit.SECONDS).toString();
  }
}
