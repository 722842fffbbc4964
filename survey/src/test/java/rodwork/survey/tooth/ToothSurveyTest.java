package rodwork.survey.tooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.testing.Shared;
import rodwork.geometry.testing.UndercutTruth;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.testing.BallTooth;
import rodwork.survey.tooth.ZoneDepth.Deepest;

/**
 * Undercut by tooth. Truth: a ball, as a closed form (u = R − ρ below the equator); on real arches
 * the reference fields (brute-force rays, independent of this program) at the vertices that fall on
 * crowns.
 */
class ToothSurveyTest {
  @Test
  void aBallIsUndercutAlikeAllRound() {
    Arch arch = BallTooth.arch();
    Tooth tooth = BallTooth.dentition(arch).tooth(44).orElseThrow();
    Survey survey =
        Surveyor.of(arch, SurveyRules.SHIPPED).survey(Vec3.Z, Gauges.COMMON, Watch.NONE);
    ToothSurvey found = ToothSurvey.of(survey, tooth);
    double neck = Math.sqrt(16 - 2.5 * 2.5);
    assertThat(found.zones()).hasSize(8);
    for (ZoneDepth zone : found.zones()) {
      Deepest deepest = zone.deepest().orElseThrow();
      assertThat(deepest.depthMm()).as(zone.zone().label()).isCloseTo(4 - neck, within(0.02));
      assertThat(deepest.overMarginMm()).isCloseTo(0, within(0.05));
      assertThat(deepest.reading().fitsMm()).as("0.88 mm fits no gauge").isNaN();
      assertThat(deepest.reading().belowSurveyLineMm()).isCloseTo(2.5, within(0.05));
    }
  }

  @Test
  void aMarkIsFoundByItsPlace() {
    Arch arch = BallTooth.arch();
    Tooth tooth = BallTooth.dentition(arch).tooth(44).orElseThrow();
    Survey survey =
        Surveyor.of(arch, SurveyRules.SHIPPED).survey(Vec3.Z, Gauges.COMMON, Watch.NONE);
    for (CrownZone zone : CrownZone.values()) {
      for (double gauge : Gauges.COMMON.sizesMm()) {
        ToothMark mark = ToothMark.of(survey, tooth, zone, gauge);
        Vec3 at = mark.place().orElseThrow(() -> new AssertionError(mark.toString())).point();
        double below = Math.acos((4 - gauge) / 4);
        assertThat(at.z()).isCloseTo(2.5 - 4 * Math.sin(below), within(0.03));
        assertThat(mark.overMarginMm()).isCloseTo(at.z(), within(0.03));
        assertThat(mark.fromMarginMm())
            .as("arc to the margin")
            .isCloseTo(4 * (Math.asin(2.5 / 4) - below), within(0.05));
        assertThat(CrownZone.of(tooth.place(at))).contains(zone);
      }
      ToothMark none = ToothMark.of(survey, tooth, zone, 1.5);
      assertThat(none.place()).isEmpty();
      assertThat(none.why()).isEqualTo("deepest here 0.88 mm");
      assertThat(none.deepestMm()).isCloseTo(0.88, within(0.02));
    }
  }

  @ParameterizedTest
  @CsvSource({"upper-16-23, a", "upper-16-23, b", "lower-35-37-47, a", "lower-35-37-47, b"})
  void realCrownsAgreeWithTheReferenceFields(String name, String which) throws IOException {
    Path ply = Shared.file("arches/" + name + ".ply");
    UndercutTruth reference = UndercutTruth.of(name, which);
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    Arch arch =
        Arch.of(MeshTopology.of(MeshFiles.read(ply, Watch.NONE).toMesh()), jaw, FrameHints.NONE);
    Dentition dentition =
        Dentition.of(arch, ToothLabels.of(Shared.labels(name)), Chart.blank(jaw), Watch.NONE);
    Survey survey =
        Surveyor.of(arch, SurveyRules.SHIPPED).survey(reference.axis(), Gauges.COMMON, Watch.NONE);
    List<ToothSurvey> teeth = ToothSurvey.all(survey, dentition, Watch.NONE);
    int onCrowns = 0;
    int deepestHit = 0;
    for (UndercutTruth.Row row : reference.rows()) {
      Vec3 point = arch.mesh().vertex(row.vertex());
      double truth = row.depthMm();
      ToothSurvey tooth = holding(teeth, arch, row.vertex());
      if (tooth == null || row.capped() || tooth.tooth().overMarginMm(point) < 0) {
        continue;
      }
      CrownZone zone = CrownZone.of(tooth.tooth().place(point)).orElseThrow();
      ZoneDepth found = tooth.zone(zone);
      onCrowns++;
      assertThat(Math.max(found.depthMm(), found.hiddenMm()))
          .as("%s %s of %s, vertex %s", name, zone.label(), tooth.tooth(), row.vertex())
          .isGreaterThan(truth - 0.1);
      if (found.deepest().isPresent() && found.deepest().get().point().distance(point) < 0.05) {
        deepestHit++;
        assertThat(found.depthMm()).isCloseTo(truth, within(0.06));
      }
    }
    System.out.printf(
        "%s.%s: %d reference places on crowns, %d of them the deepest of their zone%n",
        name, which, onCrowns, deepestHit);
    assertThat(onCrowns).isGreaterThan(150);
    assertThat(deepestHit).isGreaterThan(3);
  }

  private static @Nullable ToothSurvey holding(List<ToothSurvey> teeth, Arch arch, int vertex) {
    for (ToothSurvey tooth : teeth) {
      for (int t : tooth.tooth().copyOfTriangles()) {
        for (int k = 0; k < 3; k++) {
          if (arch.mesh().corner(t, k) == vertex) {
            return tooth;
          }
        }
      }
    }
    return null;
  }
}
