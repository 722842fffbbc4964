package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rodwork.geometry.overhang.Overhang;

/** Each benchmark sets up and does its work, on a small cast; what it measures is not looked at. */
class BenchmarksTest {
  private static final String SMALL = "3k";

  @Test
  void survey() {
    SurveyBenchmark benchmark = new SurveyBenchmark();
    benchmark.cast = SMALL;
    benchmark.setUp();
    Overhang field = benchmark.field();
    assertThat(IntStream.range(0, field.vertexCount()).mapToObj(field::depth))
        .anyMatch(depth -> depth > 0.5)
        .anyMatch(depth -> depth == 0);
    assertThat(benchmark.field().axis())
        .as("each survey has a new axis")
        .isNotEqualTo(field.axis());
    assertThat(benchmark.survey().lines()).isNotEmpty();
    assertThat(benchmark.survey().marks()).isNotEmpty();
  }

  @Test
  void read() throws IOException {
    ReadBenchmark benchmark = new ReadBenchmark();
    benchmark.cast = SMALL;
    benchmark.setUp();
    try {
      assertThat(benchmark.weld().vertexCount()).isEqualTo(MadeCast.of(3000).vertexCount());
      assertThat(benchmark.weldAndAdjacency().edgeCount()).isPositive();
    } finally {
      benchmark.tearDown();
    }
  }

  @Test
  void intake() {
    IntakeBenchmark benchmark = new IntakeBenchmark();
    benchmark.cast = SMALL;
    benchmark.setUp();
    assertThat(benchmark.intake().mesh().triangleCount())
        .isEqualTo(MadeCast.of(3000).triangleCount());
  }

  @Test
  void tree() {
    TreeBenchmark benchmark = new TreeBenchmark();
    benchmark.cast = SMALL;
    benchmark.setUp();
    assertThat(benchmark.build().mesh().vertexCount()).isPositive();
    assertThat(benchmark.closestPoints()).hasSize(TreeBenchmark.POINTS).doesNotContain(Float.NaN);
    assertThat(benchmark.raysUp()).contains((byte) 1).contains((byte) 0);
  }
}
