package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class MarksTest {
  private static final String SURVEY = "new axis: depths, lines and three gauges";

  private static Row row(String task, String size, String who, int cores, double ms) {
    return new Row(task, size, who, cores, ms, ms, "");
  }

  @Test
  void aFixedMarkIsHeldAgainstTheRightRow() {
    List<Marks.Mark> marks =
        Marks.among(
            List.of(
                row(SURVEY, "270k", "Rodwork", 2, 10),
                row(SURVEY, Casts.REAL, "Rodwork", 1, 90),
                row(SURVEY, Casts.REAL, "Rodwork", 2, 51)));
    assertThat(marks).hasSize(1);
    assertThat(marks.getFirst().measuredMs()).isEqualTo(51);
    assertThat(marks.getFirst().met()).isFalse();
  }

  @Test
  void aMarkSetByAPeerTakesThePeersTime() {
    List<Marks.Mark> marks =
        Marks.among(
            List.of(
                row("STL read and welded", Casts.REAL, "Rodwork", 1, 200),
                row("STL read and welded", Casts.REAL, "VTK 9 vtkSTLReader, merging", 1, 300)));
    assertThat(marks).hasSize(1);
    assertThat(marks.getFirst().limitMs()).isEqualTo(300);
    assertThat(marks.getFirst().met()).isTrue();
  }
}
