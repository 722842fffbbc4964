package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.tooth.CrownZone;
import rodwork.survey.tooth.ToothMark;
import rodwork.survey.tooth.ToothSurvey;

/** What the demo casts were made to show, told by tooth at the reference orientation. */
class TeethSurveyOnDemoTest {
  @Test
  void lower() {
    DemoCast cast = Casts.of(Jaw.LOWER);
    Arch arch = arch(cast);
    Dentition dentition = dentition(cast, arch);
    Survey survey = survey(arch);
    ToothMark mark =
        ToothMark.of(survey, dentition.tooth(34).orElseThrow(), CrownZone.MESIOFACIAL, 0.50);
    assertThat(mark.place()).as("34 has a place with 0.50 mm mesiofacially").isPresent();
    assertThat(mark.fromMarginMm()).isBetween(0.5, 2.5);
    // 44 is bulbous all round; 47 leans to the tongue and the front.
    ToothSurvey bulbous = ToothSurvey.of(survey, dentition.tooth(44).orElseThrow());
    assertThat(bulbous.zone(CrownZone.MIDFACIAL).depthMm()).isGreaterThan(0.4);
    ToothSurvey leaning = ToothSurvey.of(survey, dentition.tooth(47).orElseThrow());
    assertThat(leaning.zone(CrownZone.MIDLINGUAL).depthMm())
        .isGreaterThan(5 * leaning.zone(CrownZone.MIDFACIAL).depthMm());
    assertThat(leaning.zone(CrownZone.MESIAL).depthMm())
        .isGreaterThan(leaning.zone(CrownZone.DISTAL).depthMm() + 0.5);
  }

  @Test
  void upper() {
    DemoCast cast = Casts.of(Jaw.UPPER);
    Arch arch = arch(cast);
    Dentition dentition = dentition(cast, arch);
    Survey survey = survey(arch);
    ToothSurvey bare = ToothSurvey.of(survey, dentition.tooth(13).orElseThrow());
    for (CrownZone zone : CrownZone.THIRDS.subList(0, 3)) {
      assertThat(bare.zone(zone).depthMm()).as("13 has none to use: %s", zone).isLessThan(0.2);
    }
    ToothMark none =
        ToothMark.of(survey, dentition.tooth(13).orElseThrow(), CrownZone.MIDFACIAL, 0.25);
    assertThat(none.place()).isEmpty();
    assertThat(none.why()).startsWith("deepest here 0.0");
    ToothMark high =
        ToothMark.of(survey, dentition.tooth(27).orElseThrow(), CrownZone.MIDFACIAL, 0.25);
    assertThat(high.fromMarginMm()).as("27 leans to the cheek: a high line").isGreaterThan(2.5);
  }

  private static Arch arch(DemoCast cast) {
    BitSet base = new BitSet();
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      base.set(t, cast.label(t) == DemoCast.BASE);
    }
    return new Arch(
        MeshTopology.of(cast.mesh()), AnatomicSurface.given(cast.mesh(), base), cast.frame());
  }

  private static Dentition dentition(DemoCast cast, Arch arch) {
    int[] labels = new int[cast.mesh().triangleCount()];
    for (int t = 0; t < labels.length; t++) {
      labels[t] = Math.max(DemoCast.GUM, cast.label(t));
    }
    return Dentition.of(
        arch,
        ToothLabels.of(labels),
        Chart.missing(cast.jaw(), cast.missing().stream().map(ToothNumber::of).toList()),
        Watch.NONE);
  }

  private static Survey survey(Arch arch) {
    return Surveyor.of(arch, SurveyRules.SHIPPED).survey(Vec3.Z, Gauges.COMMON, Watch.NONE);
  }
}
