package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.casework.prescription.Order;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.Answers;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.rules.Finding;
import rodwork.rules.Verdict;
import rodwork.survey.Tilt;

/**
 * What a plan must not pass over in silence, on the lower demo cast: implants, paths beyond the
 * limit of tilt, gauges of a rulebook's own.
 */
class NotJudgedTest {
  private static final Rulebook BOOK = Rulebook.shipped();
  private static final ToothNumber IMPLANT = ToothNumber.of(34);
  private static final CastTeeth TEETH =
      FindTeeth.of(
          OpenDemo.of(Jaw.LOWER, Watch.NONE),
          new WantedTeeth(
              Stream.of(35, 36, 37, 45, 46).map(ToothNumber::of).collect(Collectors.toSet()),
              null,
              List.of()),
          Watch.NONE);
  private static final Chart CHART =
      TEETH.dentition().chart().change(IMPLANT, e -> e.withPresence(ToothEntry.Presence.IMPLANT));

  private static JudgeAbutments.Wanted wanted(Tilt tilt, Chart chart) {
    return new JudgeAbutments.Wanted(
        new WantedPath.AtTilt(tilt), new TreeSet<>(), chart, Answers.NONE);
  }

  private static MakePlan.Planned plan(Tilt tilt, Chart chart, Choices choices) {
    return MakePlan.of(TEETH, wanted(tilt, chart), choices, BOOK, Watch.NONE);
  }

  @Test
  void anImplantCarriesNothingAndIsToldAsNotJudged() {
    MakePlan.Planned as = plan(Tilt.REFERENCE, TEETH.dentition().chart(), Choices.NONE);
    assertThat(as.plan().rests()).extracting(Part.Rest::tooth).contains(IMPLANT);
    MakePlan.Planned planned = plan(Tilt.REFERENCE, CHART, Choices.NONE);
    assertThat(planned.judged().abutments())
        .extracting(a -> a.tooth().number())
        .isNotEmpty()
        .doesNotContain(IMPLANT);
    assertThat(planned.plan().rests()).extracting(Part.Rest::tooth).doesNotContain(IMPLANT);
    assertThat(planned.plan().clasps()).extracting(Part.Clasp::tooth).doesNotContain(IMPLANT);
    assertThat(planned.plan().plates())
        .extracting(Part.GuidingPlate::tooth)
        .doesNotContain(IMPLANT);
    assertThat(planned.preparation().steps())
        .extracting(step -> step.tooth())
        .isNotEmpty()
        .doesNotContain(IMPLANT);
    assertThat(planned.plan().questions())
        .anyMatch(q -> q.fdi().contains("The chart calls 34 implants: recognised, and not judged"));
    assertThat(as.plan().questions()).noneMatch(q -> q.fdi().contains("implant"));
  }

  @Test
  void whatIsAskedOfAnImplantIsRefused() {
    Choices rest =
        new Choices(
            Map.of(IMPLANT, new Choices.RestChoice(Part.RestKind.OCCLUSAL, Surface.MESIAL)),
            Map.of(),
            Optional.empty(),
            Set.of(),
            List.of(),
            Map.of(),
            Set.of(),
            Map.of());
    assertThatThrownBy(() -> plan(Tilt.REFERENCE, CHART, rest))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.code()).isEqualTo("plan-on-implant"));
    assertThatThrownBy(
            () ->
                JudgeAbutments.of(
                    TEETH,
                    new JudgeAbutments.Wanted(
                        WantedPath.reference(),
                        new TreeSet<>(Set.of(IMPLANT)),
                        CHART,
                        Answers.NONE),
                    BOOK,
                    Watch.NONE))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.code()).isEqualTo("abutment-is-implant"));
  }

  @Test
  void aPathBeyondTheTiltsOfPracticeIsAFindingAndAnOpenPointOnPaper() {
    for (double deg : new double[] {5, 12, 20}) {
      Tilt tilt = new Tilt(deg, 0);
      WritePrescription.Written written =
          WritePrescription.of(
              TEETH,
              wanted(tilt, TEETH.dentition().chart()),
              Choices.NONE,
              BOOK,
              new WritePrescription.Ask(
                  "T-1", LocalDate.of(2026, 1, 1), Order.BLANK, "demo", "0".repeat(64), null),
              Watch.NONE);
      assertThat(verdict(written, "tilt-warn")).isEqualTo(deg > 10 ? Verdict.NOT_MET : Verdict.MET);
      assertThat(verdict(written, "tilt-limit"))
          .isEqualTo(deg > 15 ? Verdict.NOT_MET : Verdict.MET);
      String open = written.prescription().json().at("/content/open").toString();
      assertThat(open.contains("tilted by %.1f°".formatted(deg))).isEqualTo(deg > 10);
      assertThat(open.contains("over the limit of 15°")).isEqualTo(deg > 15);
    }
  }

  private static Verdict verdict(WritePrescription.Written written, String rule) {
    List<Finding> asked =
        written.planned().plan().findings().stream().filter(f -> f.rule().equals(rule)).toList();
    assertThat(asked).as(rule).hasSize(1);
    return asked.getFirst().verdict();
  }

  /** A rulebook whose wires take 0.60 mm is surveyed with a gauge of that size. */
  @Test
  void aGaugeOfTheRulebooksOwnHasItsMarks() {
    String text = BOOK.text();
    String own =
        text.replace(
            "undercut-wire: {unit: mm, decided-by: wire-undercut}",
            "undercut-wire: {value: 0.60, unit: mm, standing: own choice, source: 'a school'}");
    assertThat(own).isNotEqualTo(text);
    Rulebook book = Rulebook.of("a copy", own);
    int marks = 0;
    int families = 0;
    for (Abutment a :
        JudgeAbutments.of(
                TEETH, wanted(Tilt.REFERENCE, TEETH.dentition().chart()), book, Watch.NONE)
            .abutments()) {
      for (AbutmentFacts.Third third : a.judgement().facts().thirds().values()) {
        marks += (int) third.marks().stream().filter(m -> m.gaugeMm() == 0.60).count();
      }
      for (Judgement j : a.judgement().inOrder()) {
        families += j.family().gauge().value() == 0.60 ? 1 : 0;
        assertThat(j.steps())
            .as(j.family().name() + " at " + a.tooth().number())
            .noneMatch(s -> s.because().contains("no gauge reaches"));
      }
    }
    assertThat(families).isPositive();
    assertThat(marks).isPositive();
  }
}
