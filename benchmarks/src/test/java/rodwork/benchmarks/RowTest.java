package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class RowTest {
  @Test
  void roundsOfOneTaskArePooled() {
    List<Row> rows =
        Row.ofLines(
            List.of(
                "row\tcarve\t10k\tA\t1\tfirst\t3.0 1.0",
                "left out: B",
                "row\tcarve\t10k\tA\t2\t\t9.0",
                "row\tcarve\t10k\tA\t1\tlast\t 2.0 8.0 "));
    assertThat(rows)
        .containsExactly(
            new Row("carve", "10k", "A", 1, 2.5, 1.0, "last"),
            new Row("carve", "10k", "A", 2, 9.0, 9.0, ""));
  }

  @Test
  void aLineThatLacksACellIsRefused() {
    assertThatThrownBy(() -> Row.ofLines(List.of("row\tcarve\t10k\tA\t1\t3.0")))
        .hasMessageContaining("7 cells")
        .hasMessageContaining("carve");
  }

  @Test
  void timesHaveTheDigitsTheyDeserve() {
    assertThat(List.of(Row.ms(1.234), Row.ms(12.34), Row.ms(1234)))
        .containsExactly("1.23", "12.3", "1234");
  }
}
