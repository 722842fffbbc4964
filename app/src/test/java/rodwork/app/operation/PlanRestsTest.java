package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.app.report.ChartReader;
import rodwork.app.report.LabelsFile;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Shared;
import rodwork.rules.Reading;
import rodwork.survey.Tilt;

/** Where rests lie, on a real arch without 14 whose other side is whole. */
class PlanRestsTest {
  private static final ToothNumber T15 = ToothNumber.of(15);
  private static final ToothNumber T25 = ToothNumber.of(25);
  private static final ToothNumber T26 = ToothNumber.of(26);

  /** Judged once, when the first test asks. */
  private static final class OnArch {
    static final JudgeAbutments.Judged JUDGED = judge();

    private static JudgeAbutments.Judged judge() {
      OpenedCast cast =
          OpenCast.of(Shared.file("arches/upper-14.ply"), CastOptions.NONE, Watch.NONE);
      int[] labels = LabelsFile.read(Shared.file("arches/upper-14.labels.json"));
      WantedTeeth wanted = new WantedTeeth(Set.of(ToothNumber.of(14)), null, List.of());
      return JudgeAbutments.of(
          FindTeeth.labelled(cast, wanted, labels, Watch.NONE),
          new JudgeAbutments.Wanted(
              new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), null, Answers.NONE),
          Rulebook.shipped(),
          Watch.NONE);
    }
  }

  private static Plan plan(Chart chart, Map<ToothNumber, String> families) {
    Choices choices =
        new Choices(
            Map.of(),
            families,
            Optional.empty(),
            Set.of(),
            List.of(),
            Map.of(),
            Set.of(),
            Map.of());
    return MakePlan.on(OnArch.JUDGED, chart, choices, Watch.NONE).plan();
  }

  private static Chart chart() {
    return Chart.missing(Jaw.UPPER, Set.of(ToothNumber.of(14)));
  }

  private static boolean rests(Plan plan, ToothNumber tooth, Surface side) {
    return plan.rests(tooth).stream().anyMatch(rest -> rest.side() == side);
  }

  /** Taught (Brainscape deck 22222655): always two rests, or the teeth are wedged apart. */
  @Test
  void anEmbrasureClaspRestsOnBothTeethOfItsEmbrasure() {
    Plan plan = plan(chart(), Map.of(T26, "embrasure"));
    assertThat(plan.clasp(T26)).isPresent();
    assertThat(rests(plan, T26, Surface.MESIAL)).isTrue();
    assertThat(rests(plan, T25, Surface.DISTAL)).isTrue();
    // One minor connector through the embrasure carries both rests.
    assertThat(plan.minorConnectors())
        .extracting(Part.MinorConnector::tooth)
        .containsOnlyOnce(T25)
        .doesNotContain(T26);
  }

  /** The tooth across an embrasure carries nothing either where the chart takes it out of that. */
  @Test
  void anEmbrasureClaspLaysNoRestOnAToothThatMayNotCarry() {
    Chart chart =
        ChartReader.read(
            """
            {"format": "rodwork chart", "version": 1, "jaw": "upper", "missing": [14],
             "teeth": [{"tooth": 25, "presence": "present", "abutment": "no"}]}
            """,
            "the test");
    Plan plan = plan(chart, Map.of(T26, "embrasure"));
    assertThat(rests(plan, T26, Surface.MESIAL)).isTrue();
    assertThat(plan.rests(T25)).isEmpty();
    assertThat(plan.questions())
        .anySatisfy(q -> assertThat(q.fdi()).contains("26 wants a rest on the next tooth"));
  }

  @Test
  void aClaspThatReleasesHasItsRestOnTheFarSideAndACircletBesideTheSpace() {
    Plan circlet = plan(chart(), Map.of(T15, "cast-circumferential"));
    assertThat(rests(circlet, T15, Surface.MESIAL)).isTrue();
    assertThat(rests(circlet, T15, Surface.DISTAL)).isFalse();
    Plan reverse = plan(chart(), Map.of(T15, "reverse-circlet"));
    assertThat(rests(reverse, T15, Surface.DISTAL)).isTrue();
    assertThat(rests(reverse, T15, Surface.MESIAL)).isFalse();
    Plan ring = plan(chart(), Map.of(T15, "ring-upper"));
    assertThat(rests(ring, T15, Surface.MESIAL)).isTrue();
    assertThat(rests(ring, T15, Surface.DISTAL)).isTrue();
  }

  /** Taught (abcdocz, mouth preparations): what is looser than grade II carries nothing. */
  @Test
  void aToothOfGradeThreeCarriesNothingUnlessTheChartSaysSo() {
    Plan firm = plan(chart(), Map.of());
    assertThat(firm.rests(T15)).isNotEmpty();
    Chart loose = withMobility("III", "");
    Plan without = plan(loose, Map.of());
    assertThat(without.rests(T15)).isEmpty();
    assertThat(without.clasp(T15)).isEmpty();
    assertThat(without.questions())
        .anySatisfy(
            question ->
                assertThat(question.fdi()).contains("15", "too loose to carry", "mobility III"));
    Plan said = plan(withMobility("III", ", \"abutment\": \"yes\""), Map.of());
    assertThat(said.rests(T15)).isNotEmpty();
    assertThat(plan(withMobility("II", ""), Map.of()).rests(T15)).isNotEmpty();
  }

  private static Chart withMobility(String grade, String more) {
    Chart chart =
        ChartReader.read(
            """
            {"format": "rodwork chart", "version": 1, "jaw": "upper", "missing": [14],
             "teeth": [{"tooth": 15, "presence": "present", "mobility": "%s"%s}]}
            """
                .formatted(grade, more),
            "the test");
    assertThat(chart.tooth(T15).mobility()).isNotEqualTo(ToothEntry.Mobility.NOT_KNOWN);
    assertThat(chart.tooth(T15).replace()).isEqualTo(Answer.NOT_KNOWN);
    return chart;
  }

  @Test
  void whatADentureWantsInAllIsCounted() {
    Plan plan = plan(chart(), Map.of());
    Map<String, Integer> parts =
        Map.of(
            "rests-least", plan.rests().size(),
            "guiding-planes-least", plan.plates().size(),
            "clasps-class-iii", plan.clasps().size());
    parts.forEach(
        (rule, count) ->
            assertThat(plan.findings())
                .filteredOn(finding -> finding.rule().equals(rule))
                .singleElement()
                .satisfies(
                    finding ->
                        assertThat(finding.reading())
                            .isEqualTo(new Reading.Measured(count, 0, "count"))));
    assertThat(plan.findings()).anyMatch(f -> f.rule().equals("retention-mixed-most"));
  }
}
