package rodwork.casework.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.AbutmentJudgement;
import rodwork.design.clasp.AbutmentMeasure;
import rodwork.design.clasp.BarSection;
import rodwork.design.clasp.ClaspJudge;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Shared;
import rodwork.rules.Reading;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.Surveyor;

/** Abutments of real arches, labelled by hand: measured, judged, every answer with its reason. */
class RealArchTest {
  private static final Rulebook BOOK = Rulebook.shipped();

  @ParameterizedTest
  @CsvSource({"lower-35, 34, 36", "upper-14, 13, 15", "lower-35-37-47, 46, 34"})
  void abutmentsAreMeasuredAndJudged(String name, int first, int second) throws IOException {
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    Path ply = Shared.file("arches/" + name + ".ply");
    Arch arch =
        Arch.of(MeshTopology.of(MeshFiles.read(ply, Watch.NONE).toMesh()), jaw, FrameHints.NONE);
    Dentition dentition =
        Dentition.of(arch, ToothLabels.of(Shared.labels(name)), Chart.blank(jaw), Watch.NONE);
    Survey survey =
        Surveyor.of(arch, BOOK.survey()).survey(arch.frame().z(), Gauges.COMMON, Watch.NONE);
    TriangleTree tree = TriangleTree.of(arch.mesh());
    for (int fdi : new int[] {first, second}) {
      Tooth tooth = dentition.tooth(fdi).orElseThrow();
      AbutmentFacts facts =
          AbutmentMeasure.of(
              survey,
              tooth,
              Surface.DISTAL,
              Abutments.LEVELS,
              BarSection.of(survey, tree, tooth, BOOK.standOff()),
              1,
              0.3);
      assertThat(facts.thirds()).hasSize(6);
      assertThat(facts.reading(Fact.CROWN_HEIGHT)).isInstanceOf(Reading.Measured.class);
      Reading standOff = facts.reading(Fact.TOTAL_STAND_OFF_3);
      if (standOff instanceof Reading.Measured m) {
        assertThat(m.value()).isBetween(0.0, 4.0);
      }
      AbutmentJudgement judged = new ClaspJudge(BOOK.clasps()).judge(facts);
      Map<String, String> told = new TreeMap<>();
      for (Judgement j : judged.inOrder()) {
        told.put(j.family().id(), j.answer().words() + " " + j.undecided());
        if (j.answer() == Judgement.Answer.DOES_NOT_SERVE) {
          assertThat(j.steps())
              .as(j.family().id())
              .anyMatch(s -> s.finding().verdict() == rodwork.rules.Verdict.NOT_MET);
        } else if (j.answer() == Judgement.Answer.NOT_DECIDED) {
          assertThat(j.undecided()).as(j.family().id()).isNotEmpty();
        }
      }
      // Nobody asked about a free end: what stands or falls with it cannot have been answered
      // "serves".
      assertThat(told.get("rpi")).doesNotStartWith("serves");
      if (Boolean.getBoolean("rodwork.tell")) {
        System.out.println(name + " " + fdi + " " + told);
        for (Fact f : Fact.values()) {
          if (facts.general().containsKey(f)) {
            System.out.println("  " + facts.words(f) + ": " + facts.reading(f).words());
          }
        }
        facts
            .thirds()
            .forEach(
                (s, t) ->
                    System.out.println(
                        "  "
                            + s
                            + " deepest "
                            + t.deepest().words()
                            + ", above "
                            + t.roomAbove().words()
                            + ", below "
                            + t.roomBelow().words()
                            + ", marks "
                            + t.marks().stream()
                                .map(m -> m.gaugeMm() + " at " + m.fromMargin().words())
                                .toList()));
      }
    }
  }
}
