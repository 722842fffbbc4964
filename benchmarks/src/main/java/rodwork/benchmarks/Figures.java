package rodwork.benchmarks;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes the figures of one run into docs/benchmarks.md, between its marker comments, and one line
 * into its table of releases.
 */
final class Figures {
  /** Load before the run, or share of others during it, from which figures count as disturbed. */
  static final double DISTURBED_LOAD = 0.5;

  static final double DISTURBED_SHARE = 0.05;

  /** Subjects in the order of the document, each with the start of its result files' names. */
  private static final Map<String, List<String>> SUBJECTS = subjects();

  private static Map<String, List<String>> subjects() {
    Map<String, List<String>> subjects = new LinkedHashMap<>();
    subjects.put("A new axis", List.of("survey"));
    subjects.put("From the file to the cast", List.of("read", "intake", "cold"));
    subjects.put("The tree over the triangles", List.of("tree"));
    return subjects;
  }

  /**
   * The conditions of a run.
   *
   * @param version of Rodwork, with its commit
   * @param load average load of the machine just before [runnable threads]
   * @param othersShare share of all cores that other programs used meanwhile [0 to 1]
   * @param minutes how long it took
   */
  record Conditions(String version, double load, double othersShare, double minutes) {
    boolean disturbed() {
      return load > DISTURBED_LOAD || othersShare > DISTURBED_SHARE;
    }
  }

  private final Path results;

  private Figures(Path results) {
    this.results = results;
  }

  /** Arguments: document, folder of results, version, load, share of others, minutes. */
  public static void main(String[] args) throws IOException {
    Conditions conditions =
        new Conditions(
            args[2],
            Double.parseDouble(args[3]),
            Double.parseDouble(args[4]),
            Double.parseDouble(args[5]));
    Figures figures = new Figures(Path.of(args[1]));
    String block = figures.block(conditions);
    Path document = Path.of(args[0]);
    String text = Files.readString(document);
    text = Document.replaceBlock(text, "figures", block);
    text = Document.upsertRow(text, "releases", figures.release(conditions));
    Files.writeString(document, text);
    System.out.println(block);
  }

  /** Everything between the markers of the figures. */
  String block(Conditions conditions) throws IOException {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(
            Locale.ROOT,
            "Measured on %s with Rodwork %s in %.0f minutes.%s%n%n",
            LocalDate.now(ZoneOffset.UTC),
            conditions.version,
            conditions.minutes,
            conditions.disturbed() ? " **Disturbed: other work ran on the machine.**" : ""));
    out.append(
        String.format(
            Locale.ROOT,
            "- Machine: %s. Load before: %.2f; others used %.0f %% of it meanwhile.%n",
            Machine.describe(),
            conditions.load,
            100 * conditions.othersShare));
    out.append("- JVM flags: `").append(String.join(" ", flags())).append("`\n\n");
    out.append("### Marks\n\n").append(marks(all())).append('\n');
    for (String subject : SUBJECTS.keySet()) {
      out.append("### ").append(subject).append("\n\n").append(Tables.of(rows(subject)));
      out.append('\n');
    }
    out.append("### Side by side\n\n").append(SideBySide.table(results));
    return out.toString();
  }

  private String marks(List<Row> rows) {
    StringBuilder out = new StringBuilder("| mark | limit ms | from | median ms | |\n");
    out.append("| --- | --: | --- | --: | --- |\n");
    for (Marks.Mark m : Marks.among(rows)) {
      out.append(
          "| %s | %s | %s | %s | %s |%n"
              .formatted(
                  m.what(),
                  Row.ms(m.limitMs()),
                  m.limitFrom(),
                  Row.ms(m.measuredMs()),
                  m.met() ? "met" : "**not met**"));
    }
    return out.toString();
  }

  /** The line of this run in the table of releases; its first two cells tell it from others. */
  private String release(Conditions conditions) throws IOException {
    List<Row> all = all();
    return "| %s | %s | %s | %s | %s | %s | %s | %s |"
        .formatted(
            conditions.version.split(" ", 2)[0],
            Machine.describe().split(",", 2)[0],
            LocalDate.now(ZoneOffset.UTC),
            median(all, "new axis: undercut depths", Casts.REAL),
            median(all, "new axis: depths, lines and three gauges", Casts.REAL),
            median(all, "binary STL to a welded mesh", "1M"),
            median(all, "cold start: rodwork survey", Casts.REAL),
            conditions.disturbed() ? "disturbed" : "");
  }

  private static String median(List<Row> rows, String task, String size) {
    return rows.stream()
        .filter(r -> r.task().equals(task) && r.size().equals(size))
        .max(Comparator.comparingInt(Row::cores))
        .map(r -> Row.ms(r.medianMs()))
        .orElse("–");
  }

  private List<Row> all() throws IOException {
    List<Row> all = new ArrayList<>(SideBySide.rows(results));
    for (String subject : SUBJECTS.keySet()) {
      all.addAll(rows(subject));
    }
    return all;
  }

  private List<Row> rows(String subject) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (String prefix : SUBJECTS.getOrDefault(subject, List.of())) {
      for (Path file : files(prefix)) {
        rows.addAll(
            file.toString().endsWith(".json")
                ? JmhResults.rows(file)
                : Row.ofLines(Files.readAllLines(file)));
      }
    }
    return rows;
  }

  private Set<String> flags() throws IOException {
    Set<String> flags = new TreeSet<>();
    for (Path file : files("")) {
      if (file.toString().endsWith(".json")) {
        flags.addAll(JmhResults.flags(file));
      }
    }
    return flags;
  }

  private List<Path> files(String prefix) {
    try (Stream<Path> all = Files.list(results)) {
      return all.filter(
              f -> {
                String name = String.valueOf(f.getFileName());
                boolean measured = name.endsWith(".json") || name.startsWith("cold");
                return measured && name.startsWith(prefix);
              })
          .sorted()
          .collect(Collectors.toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
