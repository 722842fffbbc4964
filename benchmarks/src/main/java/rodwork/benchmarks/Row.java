package rodwork.benchmarks;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * One measured figure.
 *
 * @param task what was done
 * @param size on which cast, or how much of it
 * @param who by which program
 * @param cores how many cores it could use
 * @param medianMs median of all samples [ms]
 * @param minMs least of all samples [ms]
 * @param note what else is to be known
 */
record Row(
    String task, String size, String who, int cores, double medianMs, double minMs, String note) {

  private record Key(String task, String size, String who, int cores) {}

  /**
   * The rows of a side-by-side run: lines {@code row TASK SIZE WHO CORES NOTE SAMPLES} with tabs
   * between and the samples [ms] apart by spaces; other lines are passed over. Lines that differ in
   * nothing but note and samples, from several rounds, become one row.
   */
  static List<Row> ofLines(List<String> lines) {
    Map<Key, List<Double>> samples = new LinkedHashMap<>();
    Map<Key, String> notes = new LinkedHashMap<>();
    for (String line : lines) {
      String[] cell = line.split("\t", -1);
      if (!cell[0].equals("row")) {
        continue;
      }
      if (cell.length != 7) {
        throw new IllegalArgumentException("a measured line needs 7 cells, not: " + line);
      }
      Key key = new Key(cell[1], cell[2], cell[3], Integer.parseInt(cell[4]));
      notes.put(key, cell[5]);
      List<Double> pool = samples.computeIfAbsent(key, k -> new ArrayList<>());
      for (String sample : cell[6].strip().split(" +", -1)) {
        pool.add(Double.parseDouble(sample));
      }
    }
    List<Row> rows = new ArrayList<>();
    samples.forEach(
        (key, pool) ->
            rows.add(
                new Row(
                    key.task,
                    key.size,
                    key.who,
                    key.cores,
                    median(pool),
                    Collections.min(pool),
                    notes.getOrDefault(key, ""))));
    return rows;
  }

  static double median(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int n = sorted.size();
    return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
  }

  /** A time with as many digits as it deserves. */
  static String ms(double ms) {
    return String.format(Locale.ROOT, ms < 10 ? "%.2f" : ms < 100 ? "%.1f" : "%.0f", ms);
  }
}
