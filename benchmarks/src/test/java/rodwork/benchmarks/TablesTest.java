package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TablesTest {
  private static Row row(String who, int cores, double ms) {
    return new Row("carve", "10k", who, cores, ms, ms, "n");
  }

  @Test
  void ratiosAreToRodworkOnAsManyCores() {
    String table =
        Tables.besides(List.of(row("Rodwork", 1, 10), row("Rodwork", 2, 4), row("Other", 2, 6)));
    assertThat(table)
        .contains("| carve | 10k | Rodwork | 2 | 4.00 | 4.00 | 1 | n |")
        .contains("| carve | 10k | Other | 2 | 6.00 | 6.00 | 1.50 | n |");
  }

  @Test
  void theWinnerIsNamedEitherWay() {
    assertThat(
            Tables.winners(List.of(row("Rodwork", 1, 10), row("Other", 1, 5), row("Slow", 1, 99))))
        .containsExactly("carve, 1 core: Other wins, 2.00 times as fast as Rodwork.");
    assertThat(Tables.winners(List.of(row("Rodwork", 2, 5), row("Other", 2, 10))))
        .containsExactly("carve, 2 cores: Rodwork wins, 2.00 times as fast as Other.");
    assertThat(Tables.winners(List.of(row("Rodwork", 2, 5)))).isEmpty();
  }
}
