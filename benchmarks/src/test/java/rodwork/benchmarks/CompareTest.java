package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.benchmarks.Compare.Line;
import rodwork.benchmarks.Compare.Verdict;

class CompareTest {
  private static Row row(String task, double ms) {
    return new Row(task, "10k", "Rodwork", 2, ms, ms, "");
  }

  private static Verdict verdict(double base, double head) {
    return Compare.compare(List.of(row("t", base)), List.of(row("t", head)), 0.15, 1)
        .getFirst()
        .verdict();
  }

  @Test
  void onlyPastShareAndFloorIsATaskSlower() {
    assertThat(verdict(100, 120)).isEqualTo(Verdict.SLOWER);
    assertThat(verdict(100, 114)).as("within the share").isEqualTo(Verdict.SAME);
    assertThat(verdict(2, 2.9)).as("within the floor").isEqualTo(Verdict.SAME);
    assertThat(verdict(2, 3.1)).isEqualTo(Verdict.SLOWER);
    assertThat(verdict(120, 100)).isEqualTo(Verdict.FASTER);
  }

  @Test
  void whatIsOnOneSideOnlyIsTold() {
    List<Line> lines = Compare.compare(List.of(row("gone", 1)), List.of(row("new", 2)), 0.15, 1);
    assertThat(lines)
        .extracting(Line::verdict)
        .containsExactly(Verdict.ONLY_BASE, Verdict.ONLY_HEAD);
  }
}
