package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JmhResultsTest {
  private static final String RUN =
      """
      [{"benchmark": "rodwork.benchmarks.SurveyBenchmark.field", "mode": "MODE",
        "jvmArgs": ["-Xmx1g", "-Djava.util.concurrent.ForkJoinPool.common.parallelism=0"],
        "params": {"cast": "10k"},
        "primaryMetric": {"score": 3.0, "scoreUnit": "ms/op",
          "scorePercentiles": {"0.0": 1.5, "50.0": 2.5, "100.0": 9.0}}}]
      """;

  @TempDir Path folder;

  private Path file(String mode) throws IOException {
    return Files.writeString(folder.resolve("run.json"), RUN.replace("MODE", mode));
  }

  @Test
  void oneRunIsOneRow() throws IOException {
    assertThat(JmhResults.rows(file("sample")))
        .containsExactly(new Row("new axis: undercut depths", "10k", "Rodwork", 1, 2.5, 1.5, ""));
    assertThat(JmhResults.flags(file("sample"))).containsExactly("-Xmx1g");
  }

  @Test
  void otherModesAreRefused() {
    assertThatThrownBy(() -> JmhResults.rows(file("thrpt")))
        .hasMessageContaining("SurveyBenchmark.field")
        .hasMessageContaining("sample-time");
  }
}
