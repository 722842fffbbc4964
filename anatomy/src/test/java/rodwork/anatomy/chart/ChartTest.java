package rodwork.anatomy.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothEntry.Mobility;
import rodwork.anatomy.chart.ToothEntry.Presence;

class ChartTest {
  private static final ToothNumber T16 = ToothNumber.of(16);
  private static final ToothNumber T18 = ToothNumber.of(18);

  @Test
  void onlyWhatIsMissingIsNeeded() {
    Chart chart = Chart.missing(Jaw.UPPER, List.of(T16));
    assertThat(chart.missing()).containsExactly(T16);
    assertThat(chart.standing()).hasSize(13).doesNotContain(T16, T18);
    ToothEntry eleven = chart.tooth(ToothNumber.of(11));
    assertThat(eleven.stands()).isTrue();
    assertThat(eleven.abutment()).isEqualTo(Answer.NOT_KNOWN);
    assertThat(eleven.mobility()).isEqualTo(Mobility.NOT_KNOWN);
    assertThat(eleven.crownToRoot()).isEmpty();
    assertThat(chart.place(T16).vestibuleDepthMm()).isEmpty();
    assertThat(chart.freeEnd(Side.LEFT)).isEqualTo(Firmness.NOT_KNOWN);
  }

  @Test
  void aChangeLeavesTheOldChartAlone() {
    Chart before = Chart.blank(Jaw.UPPER);
    Chart after = before.change(T16, e -> e.withPresence(Presence.TO_BE_EXTRACTED));
    assertThat(before.standing()).contains(T16);
    assertThat(after.standing()).doesNotContain(T16);
    assertThat(after.missing()).isEmpty();
    assertThat(after.with(T18, ToothEntry.PRESENT).standing()).contains(T18);
  }

  @Test
  void whatCannotBeIsRefused() {
    assertThatThrownBy(() -> Chart.blank(Jaw.UNKNOWN)).hasMessageContaining("upper or the lower");
    assertThatThrownBy(() -> Chart.missing(Jaw.LOWER, List.of(T16)))
        .hasMessageContaining("tooth 16 is not in the lower jaw");
    assertThatThrownBy(
            () ->
                new PlaceEntry(
                    OptionalDouble.of(-1),
                    OptionalDouble.empty(),
                    Answer.NOT_KNOWN,
                    Answer.NOT_KNOWN))
        .hasMessageContaining("vestibule depth -1.0 mm");
    assertThatThrownBy(
            () -> Chart.blank(Jaw.LOWER).withTori(Map.of(Torus.Site.PALATAL, Torus.of(Answer.YES))))
        .hasMessageContaining("a palatal torus is not in this jaw");
    assertThatThrownBy(
            () ->
                new Torus(
                    Answer.NO,
                    Optional.of(T16),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty()))
        .hasMessageContaining("not there has a place or a size");
    assertThat(new TreeMap<>(Chart.blank(Jaw.UPPER).teeth())).isEmpty();
  }

  /** A torus on the other side, or of no length, is refused by the end that is wrong. */
  @ParameterizedTest
  @CsvSource({
    "MANDIBULAR_LEFT, 43, 35, 'a left mandibular torus from 43; wanted is a tooth beside which'",
    "MANDIBULAR_LEFT, 33, 45, 'a left mandibular torus to 45; wanted is a tooth beside which'",
    "MANDIBULAR_RIGHT, 33, 35, 'a right mandibular torus from 33; wanted'",
    "MANDIBULAR_RIGHT, 43, 45, ''",
    "MANDIBULAR_RIGHT, 44, 44, ''",
    "PALATAL, 14, 14, 'a palatal torus to 14; wanted is a tooth before or behind the level of"
        + " from'",
    "PALATAL, 14, 24, 'a palatal torus to 24; wanted is a tooth before or behind'",
    "PALATAL, 24, 16, ''"
  })
  void aTorusLiesOnItsSideAndHasALength(Torus.Site site, int from, int to, String told) {
    Torus torus =
        new Torus(
            Answer.YES,
            Optional.of(ToothNumber.of(from)),
            Optional.of(ToothNumber.of(to)),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    Chart chart = Chart.blank(site.jaw());
    if (told.isEmpty()) {
      assertThat(chart.withTori(Map.of(site, torus)).torus(site)).isEqualTo(torus);
    } else {
      assertThatThrownBy(() -> chart.withTori(Map.of(site, torus))).hasMessageContaining(told);
    }
  }
}
