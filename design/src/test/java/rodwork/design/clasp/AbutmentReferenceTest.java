package rodwork.design.clasp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.testing.Shared;
import rodwork.geometry.testing.UndercutTruth;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.tooth.CrownZone;

/**
 * What the ledger says of real abutments against an independent program, {@link UndercutTruth}, at
 * the vertices that it measured on their crowns.
 */
class AbutmentReferenceTest {
  /**
   * Places on this much of a crown may be told by the reference as a slot between its rays [mm].
   */
  private static final double SLOT_MM = 0.1;

  /** A reference place this near to a mark tells its depth, to half of that [mm]. */
  private static final double NEAR_MM = 0.3;

  /** Where a crown is undercut at all: the depth from which a survey line is drawn [mm]. */
  private static final double UNDERCUT_MM = 0.05;

  /** How far a survey line may rise within a third, where its height is told by one place [mm]. */
  private static final double LINE_RUN_MM = 1;

  @ParameterizedTest
  @CsvSource({"upper-16-23, a", "upper-16-23, b", "lower-35-37-47, a", "lower-35-37-47, b"})
  void thirdsMarksAndReciprocalUndercutAgree(String name, String which) throws IOException {
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    Arch arch =
        Arch.of(
            MeshTopology.of(
                MeshFiles.read(Shared.file("arches/" + name + ".ply"), Watch.NONE).toMesh()),
            jaw,
            FrameHints.NONE);
    UndercutTruth reference = UndercutTruth.of(name, which);
    Dentition dentition =
        Dentition.of(arch, ToothLabels.of(Shared.labels(name)), Chart.blank(jaw), Watch.NONE);
    Survey survey =
        Surveyor.of(arch, SurveyRules.SHIPPED).survey(reference.axis(), Gauges.COMMON, Watch.NONE);
    int inThirds = 0;
    int nearMarks = 0;
    int wrongAtMarks = 0;
    int aboveLine = 0;
    int wrongAboveLine = 0;
    int reciprocal = 0;
    for (Tooth tooth : dentition.teeth().byNumber().values()) {
      AbutmentFacts facts =
          AbutmentMeasure.of(
              survey, tooth, Surface.DISTAL, new AbutmentFacts.Levels(3, 6), List.of(), 1, 0.3);
      Reading across = facts.reading(Fact.RECIPROCAL_UNDERCUT);
      for (UndercutTruth.Row row : on(tooth, arch, reference)) {
        Vec3 point = arch.mesh().vertex(row.vertex());
        CrownZone zone = CrownZone.of(tooth.place(point)).orElseThrow();
        if (zone.surface() == Surface.LINGUAL
            && Math.abs(tooth.heightShare(point) - 0.5) < 0.08
            && across instanceof Reading.Measured m) {
          reciprocal++;
          assertThat(m.value()).as("%s, lingual", tooth).isGreaterThan(row.depthMm() - SLOT_MM);
        }
        AbutmentFacts.Third third =
            facts.thirds().get(new AbutmentFacts.Site(zone.surface(), zone.across()));
        if (third == null) {
          continue;
        }
        inThirds++;
        if (third.roomAbove() instanceof Reading.Measured room) {
          double height =
              zone.surface() == Surface.FACIAL
                  ? tooth.size().facialHeightMm()
                  : tooth.size().lingualHeightMm();
          if (tooth.overMarginMm(point) > height - room.value() + LINE_RUN_MM) {
            aboveLine++;
            wrongAboveLine += row.depthMm() > UNDERCUT_MM ? 1 : 0;
          }
        }
        for (AbutmentFacts.Mark mark : third.marks()) {
          Place.Spot spot = mark.place().spot().orElseThrow();
          if (new Vec3(spot.x(), spot.y(), spot.z()).distance(point) < NEAR_MM) {
            nearMarks++;
            double off = Math.abs(row.depthMm() - mark.gaugeMm());
            wrongAtMarks += off > NEAR_MM / 2 ? 1 : 0;
          }
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%s.%s: %d reference places in thirds; %d near marks, %d off; %d above the line, %d"
            + " undercut; %d where a reciprocal arm lies%n",
        name,
        which,
        inThirds,
        nearMarks,
        wrongAtMarks,
        aboveLine,
        wrongAboveLine,
        reciprocal);
    assertThat(inThirds).isGreaterThan(250);
    assertThat(nearMarks).isPositive();
    assertThat(wrongAtMarks).isZero();
    assertThat(aboveLine).isGreaterThan(80);
    assertThat(wrongAboveLine).isZero();
    assertThat(reciprocal).isGreaterThan(5);
  }

  /** The places of the reference on a crown, above its margin and within its reach. */
  private static List<UndercutTruth.Row> on(Tooth tooth, Arch arch, UndercutTruth reference) {
    boolean[] mine = new boolean[arch.mesh().vertexCount()];
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        mine[arch.mesh().corner(t, k)] = true;
      }
    }
    List<UndercutTruth.Row> rows = new ArrayList<>();
    for (UndercutTruth.Row row : reference.rows()) {
      if (mine[row.vertex()]
          && !row.capped()
          && tooth.overMarginMm(arch.mesh().vertex(row.vertex())) >= 0) {
        rows.add(row);
      }
    }
    return rows;
  }
}
