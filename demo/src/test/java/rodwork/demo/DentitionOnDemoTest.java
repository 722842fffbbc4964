package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.TeethPlane;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;

/**
 * Teeth, spaces and class as measured from the labels, against what the demo casts were made from:
 * margins, axes, sizes, lengths of spaces.
 */
class DentitionOnDemoTest {
  @Test
  void lower() {
    Dentition dentition = check(Casts.of(Jaw.LOWER));
    assertThat(dentition.kennedy().title()).isEqualTo("class II modification 1");
    assertThat(space(dentition, 45).lengthMm()).isCloseTo(16.2, within(0.5));
    assertThat(space(dentition, 36).freeEnd()).isTrue();
    assertThat(space(dentition, 36).lengthMm()).isGreaterThan(25);
    assertThat(dentition.proximalSurfaces())
        .extracting(p -> p.tooth().number().fdi() + " " + p.side())
        .containsExactly("47 MESIAL", "44 DISTAL", "34 DISTAL");
  }

  @Test
  void upper() {
    Dentition dentition = check(Casts.of(Jaw.UPPER));
    assertThat(dentition.kennedy().title()).isEqualTo("class III modification 1");
    assertThat(space(dentition, 14).lengthMm()).isCloseTo(13.4, within(0.5));
    assertThat(space(dentition, 25).lengthMm()).isCloseTo(15.6, within(0.5));
  }

  private static Space space(Dentition dentition, int fdi) {
    return dentition.openSpaces().stream()
        .filter(s -> s.has(ToothNumber.of(fdi)))
        .findFirst()
        .orElseThrow();
  }

  private static Dentition check(DemoCast cast) {
    int n = cast.mesh().triangleCount();
    int[] labels = new int[n];
    BitSet base = new BitSet();
    for (int t = 0; t < n; t++) {
      labels[t] = Math.max(DemoCast.GUM, cast.label(t));
      base.set(t, cast.label(t) == DemoCast.BASE);
    }
    Arch arch =
        new Arch(
            MeshTopology.of(cast.mesh()), AnatomicSurface.given(cast.mesh(), base), cast.frame());
    Chart chart = Chart.missing(cast.jaw(), cast.missing().stream().map(ToothNumber::of).toList());
    Dentition dentition = Dentition.of(arch, ToothLabels.of(labels), chart, Watch.NONE);
    assertThat(dentition.teeth().byNumber()).hasSize(cast.teeth().size());
    for (DemoTooth truth : cast.teeth()) {
      Tooth tooth = dentition.tooth(truth.fdi()).orElseThrow();
      double margin = meanDistance(tooth.margin(), truth.margin());
      System.out.printf(
          "%d: margin %.2f mm, axis %.1f°, facial %.1f°, height %+.2f, width %+.2f, depth %+.2f mm%n",
          truth.fdi(),
          margin,
          tooth.axes().axis().angleDegTo(truth.axis()),
          tooth.axes().facial().angleDegTo(truth.facial()),
          tooth.size().facialHeightMm() - truth.lengthMm(),
          tooth.size().mesiodistalMm() - truth.mesiodistalMm(),
          tooth.size().faciolingualMm() - truth.faciolingualMm());
      assertThat(margin).as("margin of %s", tooth).isLessThan(0.3);
      assertThat(tooth.axes().axis().angleDegTo(truth.axis()))
          .as("axis of %s", tooth)
          .isLessThan(8);
      assertThat(tooth.axes().facial().angleDegTo(truth.facial())).isLessThan(14);
      assertThat(tooth.axes().mesial().angleDegTo(truth.mesial())).isLessThan(14);
      assertThat(tooth.size().facialHeightMm()).isCloseTo(truth.lengthMm(), within(0.5));
      assertThat(tooth.size().mesiodistalMm()).isCloseTo(truth.mesiodistalMm(), within(0.5));
      assertThat(tooth.size().faciolingualMm()).isCloseTo(truth.faciolingualMm(), within(0.5));
      places(tooth, truth);
    }
    TeethPlane plane = TeethPlane.over(cast.frame(), dentition.inOrder());
    System.out.printf(
        "%s: plane %.1f° off, ± %.1f° anterior, ± %.1f° right, rms %.2f mm%n",
        cast.jaw(),
        plane.frame().z().angleDegTo(Vec3.Z),
        plane.anteriorDeg(),
        plane.rightDeg(),
        plane.rmsMm());
    double off = plane.frame().z().angleDegTo(Vec3.Z);
    assertThat(off).isLessThan(Math.hypot(plane.anteriorDeg(), plane.rightDeg()));
    assertThat(plane.ask() || off < 2).as("sure only where it is right").isTrue();
    return dentition;
  }

  /** Places of the surface in the tooth's own true frame are called by their names. */
  private static void places(Tooth tooth, DemoTooth truth) {
    double z = truth.lengthMm() / 2;
    for (Surface surface :
        List.of(Surface.FACIAL, Surface.LINGUAL, Surface.MESIAL, Surface.DISTAL)) {
      Vec3 out =
          switch (surface) {
            case FACIAL -> truth.facial().times(truth.faciolingualMm() / 2);
            case LINGUAL -> truth.facial().times(-truth.faciolingualMm() / 2);
            case MESIAL -> truth.mesial().times(truth.mesiodistalMm() / 2);
            default -> truth.mesial().times(-truth.mesiodistalMm() / 2);
          };
      Vec3 point = truth.origin().plus(truth.axis().times(z)).plus(out);
      assertThat(tooth.place(point).surface()).as("%s of %s", surface, tooth).isEqualTo(surface);
    }
    Vec3 low = truth.origin().plus(truth.facial().times(truth.faciolingualMm() / 2));
    assertThat(tooth.heightShare(low)).isBetween(-0.1, 0.1);
    assertThat(tooth.heightShare(low.plus(truth.axis().times(truth.lengthMm()))))
        .isBetween(0.9, 1.1);
  }

  private static double meanDistance(GingivalMargin margin, List<Vec3> truth) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < margin.points().size(); i++) {
      if (margin.kinds().get(i) == GingivalMargin.Kind.SEEN) {
        double least = 1e9;
        for (int j = 0; j < truth.size(); j++) {
          Vec3 a = truth.get(j);
          Vec3 b = truth.get((j + 1) % truth.size()).minus(a);
          double t = Math.clamp(margin.points().get(i).minus(a).dot(b) / b.dot(b), 0, 1);
          least = Math.min(least, margin.points().get(i).distance(a.plus(b.times(t))));
        }
        sum += least;
        count++;
      }
    }
    return sum / count;
  }
}
