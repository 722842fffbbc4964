package rodwork.benchmarks;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What JMH writes with {@code -rf json}, as rows. Reads benchmarks in sample-time mode, in ms. */
final class JmhResults {
  private static final String PARALLELISM =
      "-Djava.util.concurrent.ForkJoinPool.common.parallelism=";

  /** What each benchmark measures, in words. */
  private static final Map<String, String> TASKS =
      Map.of(
          "SurveyBenchmark.field", "new axis: undercut depths",
          "SurveyBenchmark.survey", "new axis: depths, lines and three gauges",
          "ReadBenchmark.weld", "binary STL to a welded mesh",
          "ReadBenchmark.weldAndAdjacency", "binary STL to a welded mesh with its adjacency",
          "IntakeBenchmark.intake", "intake of a mesh in memory",
          "TreeBenchmark.build", "tree built",
          "TreeBenchmark.closestPoints", "100,000 closest points, near the surface",
          "TreeBenchmark.raysUp", "a ray up from every vertex");

  private JmhResults() {}

  static List<Row> rows(Path json) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (JsonNode run : new ObjectMapper().readTree(json.toFile())) {
      JsonNode metric = run.path("primaryMetric");
      if (!run.path("mode").asText().equals("sample")
          || !metric.path("scoreUnit").asText().equals("ms/op")) {
        throw new IllegalArgumentException(
            json + ": " + name(run) + " was not measured in sample-time mode in ms");
      }
      JsonNode percentiles = metric.path("scorePercentiles");
      rows.add(
          new Row(
              TASKS.getOrDefault(name(run), name(run)),
              run.path("params").path("cast").asText(),
              "Rodwork",
              cores(run),
              percentiles.path("50.0").asDouble(),
              percentiles.path("0.0").asDouble(),
              ""));
    }
    return rows;
  }

  /** The JVM flags of all runs but the one that sets the cores. */
  static Set<String> flags(Path json) throws IOException {
    Set<String> flags = new TreeSet<>();
    for (JsonNode run : new ObjectMapper().readTree(json.toFile())) {
      for (JsonNode flag : run.path("jvmArgs")) {
        if (!flag.asText().startsWith("-D")) {
          flags.add(flag.asText());
        }
      }
    }
    return flags;
  }

  private static String name(JsonNode run) {
    String full = run.path("benchmark").asText();
    int method = full.lastIndexOf('.');
    return full.substring(full.lastIndexOf('.', method - 1) + 1);
  }

  /** The common pool's workers and the calling thread. */
  private static int cores(JsonNode run) {
    for (JsonNode flag : run.path("jvmArgs")) {
      if (flag.asText().startsWith(PARALLELISM)) {
        return 1 + Integer.parseInt(flag.asText().substring(PARALLELISM.length()));
      }
    }
    return Runtime.getRuntime().availableProcessors();
  }
}
