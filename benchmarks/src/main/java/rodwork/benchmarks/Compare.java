package rodwork.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Base against head: medians of two JMH result files of the same machine and hour. A task counts as
 * slower or faster only past both a share and an absolute floor, so that neither a microsecond of a
 * short task nor the drift of a long one raises an alarm.
 */
final class Compare {
  static final double SHARE = 0.15;
  static final double FLOOR_MS = 1;

  /** How a task fared. */
  enum Verdict {
    SAME,
    SLOWER,
    FASTER,
    ONLY_BASE,
    ONLY_HEAD
  }

  record Line(String task, double baseMs, double headMs, Verdict verdict) {}

  private record Key(String task, String size, int cores) {}

  private Compare() {}

  /**
   * Arguments: base file, head file, and optionally the share and the floor [ms]. Exits with 1 if
   * anything got slower or went missing.
   */
  public static void main(String[] args) throws IOException {
    double share = args.length > 2 ? Double.parseDouble(args[2]) : SHARE;
    double floor = args.length > 3 ? Double.parseDouble(args[3]) : FLOOR_MS;
    List<Line> lines =
        compare(JmhResults.rows(Path.of(args[0])), JmhResults.rows(Path.of(args[1])), share, floor);
    System.out.printf("%-70s %10s %10s %7s%n", "task", "base ms", "head ms", "change");
    for (Line l : lines) {
      String change =
          Double.isNaN(l.baseMs + l.headMs)
              ? ""
              : String.format(Locale.ROOT, "%+.0f %%", 100 * (l.headMs / l.baseMs - 1));
      String verdict = l.verdict == Verdict.SAME ? "" : "  " + l.verdict.name().replace('_', ' ');
      System.out.printf(
          "%-70s %10s %10s %7s%s%n", l.task, Row.ms(l.baseMs), Row.ms(l.headMs), change, verdict);
    }
    boolean bad =
        lines.stream().anyMatch(l -> l.verdict == Verdict.SLOWER || l.verdict == Verdict.ONLY_BASE);
    System.out.printf(
        Locale.ROOT,
        "%s (limits: %.0f %% and %s ms)%n",
        bad ? "Something got slower or went missing." : "Nothing got slower.",
        100 * share,
        Row.ms(floor));
    System.exit(bad ? 1 : 0);
  }

  static List<Line> compare(List<Row> base, List<Row> head, double share, double floorMs) {
    Map<Key, Row> bases = byTask(base);
    Map<Key, Row> heads = byTask(head);
    List<Line> lines = new ArrayList<>();
    bases.forEach(
        (key, b) -> {
          Row h = heads.get(key);
          lines.add(
              h == null
                  ? new Line(title(b), b.medianMs(), Double.NaN, Verdict.ONLY_BASE)
                  : new Line(
                      title(b),
                      b.medianMs(),
                      h.medianMs(),
                      verdict(b.medianMs(), h.medianMs(), share, floorMs)));
        });
    heads.forEach(
        (key, h) -> {
          if (!bases.containsKey(key)) {
            lines.add(new Line(title(h), Double.NaN, h.medianMs(), Verdict.ONLY_HEAD));
          }
        });
    return lines;
  }

  private static Map<Key, Row> byTask(List<Row> rows) {
    Map<Key, Row> byTask = new LinkedHashMap<>();
    rows.forEach(r -> byTask.put(new Key(r.task(), r.size(), r.cores()), r));
    return byTask;
  }

  private static Verdict verdict(double baseMs, double headMs, double share, double floorMs) {
    double least = Math.min(baseMs, headMs);
    double change = headMs - baseMs;
    if (Math.abs(change) <= Math.max(floorMs, share * least)) {
      return Verdict.SAME;
    }
    return change > 0 ? Verdict.SLOWER : Verdict.FASTER;
  }

  private static String title(Row row) {
    return row.task()
        + ", "
        + row.size()
        + ", "
        + row.cores()
        + (row.cores() == 1 ? " core" : " cores");
  }
}
