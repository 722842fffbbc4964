package rodwork.anatomy.dentition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.space.SpaceRules;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;
import rodwork.rules.Threshold;

/**
 * Whole arches. Truth: the labels and the lengths of spaces that the authors of the shared arches
 * give (their README), what is missing by the file's name, and what must not change when a cast is
 * turned.
 */
class DentitionTest {
  static Stream<String> arches() {
    return LabelledArch.NAMES.stream();
  }

  @ParameterizedTest
  @CsvSource({
    "upper-full, no space, ''",
    "upper-15-24, class III modification 1, 15 24",
    "upper-16-23, class III modification 1, 16 23",
    "upper-17-27, class I, 17 27",
    "upper-14, class III, 14",
    "upper-11, class III, 11",
    "lower-35, class III, 35",
    "lower-35-37-47, class I modification 1, 47 35 37"
  })
  void classAndSpacesFollowFromTheScan(String name, String title, String missing) {
    Dentition dentition = LabelledArch.load(name).dentition();
    assertThat(dentition.kennedy().title()).isEqualTo(title);
    assertThat(dentition.openSpaces().stream().flatMap(s -> s.missing().stream()))
        .extracting(ToothNumber::toString)
        .containsExactlyElementsOf(missing.isEmpty() ? List.of() : List.of(missing.split(" ", -1)));
    assertThat(dentition.remarks()).isEmpty();
    for (Space space : dentition.openSpaces()) {
      assertThat(space.crest()).as("crest of %s", space).hasSizeGreaterThan(3);
      assertThat(space.positions()).as("positions in %s", space).hasSize(space.missing().size());
    }
  }

  /** Lengths told by the README beside the scans [mm]. */
  @ParameterizedTest
  @CsvSource({"upper-14, 14, 7.1", "lower-35, 35, 6.0", "lower-35-37-47, 35, 8.1"})
  void spacesAreAsLongAsTold(String name, int missing, double mm) {
    Dentition dentition = LabelledArch.load(name).dentition();
    Space space =
        dentition.openSpaces().stream()
            .filter(s -> s.has(ToothNumber.of(missing)))
            .findFirst()
            .orElseThrow();
    assertThat(space.lengthMm()).isCloseTo(mm, within(0.2));
    assertThat(space.bounded()).isTrue();
    Vec3 middle = space.positions().getFirst().at();
    for (ToothNumber beside : List.of(space.right().orElseThrow(), space.left().orElseThrow())) {
      Tooth tooth = dentition.tooth(beside).orElseThrow();
      Surface side =
          dentition.spaceBeside(beside, Surface.MESIAL).equals(Optional.of(space))
              ? Surface.MESIAL
              : Surface.DISTAL;
      assertThat(tooth.place(middle).surface()).as("the space seen from " + beside).isEqualTo(side);
    }
    assertThat(dentition.proximalSurfaces().stream().filter(p -> p.space().equals(space)))
        .hasSize(2)
        .allSatisfy(p -> assertThat(p.triangles()).hasSizeGreaterThan(20));
  }

  @ParameterizedTest
  @MethodSource("arches")
  void everyToothIsOfAUsualForm(String name) {
    LabelledArch arch = LabelledArch.load(name);
    Dentition dentition = arch.dentition();
    assertThat(dentition.teeth().byNumber().keySet())
        .extracting(ToothNumber::fdi)
        .containsExactlyInAnyOrderElementsOf(arch.labels().numbers());
    for (Tooth tooth : dentition.inOrder()) {
      String which = name + " " + tooth;
      // Wide limits: whoever breaks them has measured something else than a crown.
      assertThat(tooth.size().mesiodistalMm()).as(which).isBetween(4.5, 13.5);
      assertThat(tooth.size().faciolingualMm()).as(which).isBetween(4.5, 13.5);
      assertThat(tooth.size().facialHeightMm()).as(which).isBetween(3.0, 12.5);
      assertThat(tooth.margin().seenShare()).as(which).isGreaterThan(0.5);
      assertThat(tooth.axes().axis().angleDegTo(arch.arch().frame().z())).as(which).isLessThan(30);
      Vec3 outward = tooth.centroid().minus(arch.arch().frame().origin());
      assertThat(tooth.axes().facial().dot(outward)).as(which + " faces out").isPositive();
      // On the surface: what the labels call gum or tooth meets along the margin.
      assertThat(offLabelEdge(arch, tooth))
          .as(which + " margin off the label's edge")
          .isLessThan(0.5);
    }
  }

  @ParameterizedTest
  @MethodSource("arches")
  void mesialLooksToTheMidlineAndTheNextTooth(String name) {
    Dentition dentition = LabelledArch.load(name).dentition();
    for (Tooth tooth : dentition.inOrder()) {
      tooth
          .mesialNeighbour()
          .ifPresent(
              next ->
                  assertThat(tooth.place(next.at()).surface())
                      .as("%s: %s seen from %s", name, next.number(), tooth)
                      .isEqualTo(Surface.MESIAL));
      tooth
          .distalNeighbour()
          .ifPresent(
              next ->
                  assertThat(tooth.place(next.at()).surface())
                      .as("%s: %s seen from %s", name, next.number(), tooth)
                      .isEqualTo(Surface.DISTAL));
    }
  }

  @Test
  void turnsWithTheCast() {
    LabelledArch arch = LabelledArch.load("upper-16-23");
    RigidMotion motion =
        RigidMotion.shift(new Vec3(9, -4, 70)).after(RigidMotion.turn(new Vec3(1, -2, 0.4), 2.2));
    TriangleMesh turned = Reshape.each(arch.arch().mesh(), motion::point);
    Dentition still = arch.dentition();
    Dentition moved = LabelledArch.of("upper-16-23", turned, arch.labels()).dentition();
    assertThat(moved.kennedy()).isEqualTo(still.kennedy());
    for (Tooth tooth : still.inOrder()) {
      Tooth same = moved.tooth(tooth.number()).orElseThrow();
      assertThat(same.size().mesiodistalMm()).isCloseTo(tooth.size().mesiodistalMm(), within(0.05));
      assertThat(same.size().facialHeightMm())
          .isCloseTo(tooth.size().facialHeightMm(), within(0.1));
      assertThat(same.axes().axis().angleDegTo(motion.direction(tooth.axes().axis())))
          .isLessThan(0.5);
      assertThat(
              same.margin()
                  .points()
                  .getFirst()
                  .distance(motion.point(tooth.margin().points().getFirst())))
          .isLessThan(0.01);
    }
    for (int i = 0; i < still.spaces().size(); i++) {
      assertThat(moved.spaces().get(i).lengthMm())
          .isCloseTo(still.spaces().get(i).lengthMm(), within(1e-6));
    }
  }

  @Test
  void theChartIsHeard() {
    LabelledArch arch = LabelledArch.load("upper-full");
    ToothNumber t17 = ToothNumber.of(17);
    ToothNumber t16 = ToothNumber.of(16);
    Dentition extracted =
        Dentition.of(
            arch.arch(),
            arch.labels(),
            arch.chart()
                .change(t17, e -> e.withPresence(Presence.TO_BE_EXTRACTED).withReplace(Answer.YES)),
            Watch.NONE);
    assertThat(extracted.kennedy().title()).isEqualTo("class II");
    assertThat(extracted.standing()).doesNotContain(t17).contains(t16);
    assertThat(extracted.tooth(t17)).as("it is still on the scan").isPresent();
    Dentition contrary =
        Dentition.of(
            arch.arch(),
            arch.labels(),
            arch.chart().change(t16, e -> e.withPresence(Presence.MISSING)),
            Watch.NONE);
    assertThat(contrary.remarks()).singleElement().asString().contains("calls 16 missing");
    Dentition unnamed =
        Dentition.of(
            LabelledArch.load("upper-17-27").arch(),
            LabelledArch.load("upper-17-27").labels(),
            Chart.blank(Jaw.UPPER),
            Watch.NONE);
    assertThat(unnamed.remarks()).hasSize(2).first().asString().contains("does not show 17");
  }

  @Test
  void aClosedSpaceIsNoSpace() {
    // 26 renamed 27, and 27 renamed 28: then 26 is missing, and its neighbours touch.
    LabelledArch arch = LabelledArch.load("upper-full");
    int[] labels = arch.labels().copy();
    for (int t = 0; t < labels.length; t++) {
      labels[t] = labels[t] == 26 ? 27 : labels[t] == 27 ? 28 : labels[t];
    }
    LabelledArch renamed =
        LabelledArch.of("upper-full", arch.arch().mesh(), ToothLabels.of(labels));
    Dentition dentition = renamed.dentition();
    assertThat(dentition.spaces())
        .singleElement()
        .satisfies(
            space -> {
              assertThat(space.missing()).containsExactly(ToothNumber.of(26));
              assertThat(space.closed()).isTrue();
            });
    assertThat(dentition.openSpaces()).isEmpty();
    assertThat(dentition.kennedy().title()).isEqualTo("no space");
  }

  @Test
  void whichRoomIsASpaceFollowsTheRules() {
    LabelledArch arch = LabelledArch.load("lower-35");
    Space open = arch.dentition().openSpaces().getFirst();
    SpaceRules stricter =
        new SpaceRules(
            Threshold.own("space-closed", Math.ceil(open.lengthMm()), "mm", "for this test"));
    Dentition closed = Dentition.of(arch.arch(), arch.labels(), arch.chart(), stricter, Watch.NONE);
    assertThat(closed.openSpaces()).isEmpty();
    assertThat(closed.spaces())
        .singleElement()
        .satisfies(space -> assertThat(space.positions()).isEmpty());
  }

  @Test
  void aMirroredScanIsTold() {
    LabelledArch arch = LabelledArch.load("lower-35");
    TriangleMesh mesh = arch.arch().mesh();
    double[] xyz = mesh.copyOfCoordinates();
    int[] corners = mesh.copyOfCorners();
    for (int i = 0; i < xyz.length; i += 3) {
      xyz[i] = -xyz[i];
    }
    for (int i = 0; i < corners.length; i += 3) {
      int first = corners[i];
      corners[i] = corners[i + 1];
      corners[i + 1] = first;
    }
    Dentition mirrored =
        LabelledArch.of("lower-35", TriangleMesh.of(xyz, corners), arch.labels()).dentition();
    assertThat(mirrored.remarks()).singleElement().asString().contains("may be mirrored");
  }

  @Test
  void oneToothAloneAndNoneAtAll() {
    LabelledArch arch = LabelledArch.load("lower-35");
    int[] labels = arch.labels().copy();
    for (int t = 0; t < labels.length; t++) {
      labels[t] = labels[t] == 43 ? 43 : 0;
    }
    Dentition one =
        LabelledArch.of("lower-35", arch.arch().mesh(), ToothLabels.of(labels)).dentition();
    assertThat(one.kennedy().title()).isEqualTo("class I");
    assertThat(one.openSpaces()).hasSize(2);
    Tooth tooth = one.tooth(43).orElseThrow();
    assertThat(
            tooth
                .axes()
                .facial()
                .angleDegTo(arch.dentition().tooth(43).orElseThrow().axes().facial()))
        .isLessThan(20);
    Dentition none =
        LabelledArch.of("lower-35", arch.arch().mesh(), ToothLabels.of(new int[labels.length]))
            .dentition();
    assertThat(none.kennedy().title()).isEqualTo("no tooth that counts");
    assertThat(none.spaces()).isEmpty();
  }

  @Test
  void labelsOfAnotherMeshAreRefused() {
    LabelledArch arch = LabelledArch.load("lower-35");
    assertThatThrownBy(
            () -> Dentition.of(arch.arch(), ToothLabels.of(new int[7]), arch.chart(), Watch.NONE))
        .hasMessageContaining("labels of 7 triangles");
  }

  /** Mean distance of the seen margin to the nearest edge between this label and gum [mm]. */
  private static double offLabelEdge(LabelledArch arch, Tooth tooth) {
    MeshTopology topology = arch.arch().topology();
    TriangleMesh mesh = topology.mesh();
    int fdi = tooth.number().fdi();
    double sum = 0;
    int count = 0;
    for (int i = 0; i < tooth.margin().points().size(); i++) {
      if (tooth.margin().kinds().get(i) != GingivalMargin.Kind.SEEN) {
        continue;
      }
      Vec3 p = tooth.margin().points().get(i);
      double least = 1e9;
      for (int e = 0; e < topology.edgeCount(); e++) {
        int a = topology.edgeTriangle(e, 0);
        int b = topology.edgeTriangle(e, 1);
        if (b >= 0
            && (arch.labels().of(a) == fdi) != (arch.labels().of(b) == fdi)
            && (arch.labels().of(a) == 0 || arch.labels().of(b) == 0)) {
          Vec3 u = mesh.vertex(topology.edgeVertex(e, 0));
          Vec3 w = mesh.vertex(topology.edgeVertex(e, 1)).minus(u);
          double t = Math.clamp(p.minus(u).dot(w) / w.dot(w), 0, 1);
          least = Math.min(least, p.distance(u.plus(w.times(t))));
        }
      }
      sum += least;
      count++;
    }
    return count == 0 ? 0 : sum / count;
  }
}
