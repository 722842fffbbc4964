package rodwork.benchmarks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Rows as Markdown tables, and who was fastest in words. */
final class Tables {
  private Tables() {}

  /** A plain table. */
  static String of(List<Row> rows) {
    StringBuilder out =
        new StringBuilder("| task | size | who | cores | median ms | min ms | note |\n");
    out.append("| --- | --- | --- | --: | --: | --: | --- |\n");
    for (Row r : rows) {
      out.append(cells(r)).append(" | ").append(r.note()).append(" |\n");
    }
    return out.toString();
  }

  /**
   * A table with one more column: the row's median over that of Rodwork's first row at the same
   * task with as many cores, so that 2 means "takes twice as long as Rodwork".
   */
  static String besides(List<Row> rows) {
    StringBuilder out =
        new StringBuilder(
            "| task | size | who | cores | median ms | min ms | times Rodwork's | note |\n");
    out.append("| --- | --- | --- | --: | --: | --: | --: | --- |\n");
    for (List<Row> contest : contests(rows)) {
      Optional<Row> ours = ours(contest);
      for (Row r : contest) {
        String ratio =
            ours.map(o -> o.equals(r) ? "1" : factor(r.medianMs() / o.medianMs())).orElse("–");
        out.append("%s | %s | %s |%n".formatted(cells(r), ratio, r.note()));
      }
    }
    return out.toString();
  }

  /** For each task and number of cores that a peer took part in: who won, by what factor. */
  static List<String> winners(List<Row> rows) {
    List<String> sentences = new ArrayList<>();
    for (List<Row> contest : contests(rows)) {
      Optional<Row> ours = ours(contest);
      Optional<Row> best =
          contest.stream().filter(r -> !isOurs(r)).min(Comparator.comparingDouble(Row::medianMs));
      if (ours.isEmpty() || best.isEmpty()) {
        continue;
      }
      double factor = best.get().medianMs() / ours.get().medianMs();
      sentences.add(
          "%s, %d %s: %s"
              .formatted(
                  ours.get().task(),
                  ours.get().cores(),
                  ours.get().cores() == 1 ? "core" : "cores",
                  factor >= 1
                      ? "%s wins, %s times as fast as %s."
                          .formatted(ours.get().who(), factor(factor), best.get().who())
                      : "%s wins, %s times as fast as %s."
                          .formatted(best.get().who(), factor(1 / factor), ours.get().who())));
    }
    return sentences;
  }

  private record Key(String task, int cores) {}

  /** Rows of the same task on as many cores, in the order in which they first came. */
  private static List<List<Row>> contests(List<Row> rows) {
    Map<Key, List<Row>> contests = new LinkedHashMap<>();
    for (Row r : rows) {
      contests.computeIfAbsent(new Key(r.task(), r.cores()), k -> new ArrayList<>()).add(r);
    }
    return contests.values().stream()
        .sorted(Comparator.comparing(c -> c.getFirst().task()))
        .toList();
  }

  private static Optional<Row> ours(List<Row> contest) {
    return contest.stream().filter(Tables::isOurs).findFirst();
  }

  private static boolean isOurs(Row row) {
    return row.who().startsWith("Rodwork");
  }

  private static String factor(double factor) {
    return String.format(Locale.ROOT, factor < 10 ? "%.2f" : "%.0f", factor);
  }

  private static String cells(Row r) {
    return "| %s | %s | %s | %d | %s | %s"
        .formatted(r.task(), r.size(), r.who(), r.cores(), Row.ms(r.medianMs()), Row.ms(r.minMs()));
  }
}
