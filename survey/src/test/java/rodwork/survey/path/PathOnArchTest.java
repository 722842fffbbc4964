package rodwork.survey.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;
import rodwork.survey.SurveyRules;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneRules;

/**
 * Truth: the same cast in another pose, and the depths of the whole of it. On a real arch with the
 * labels of its data's authors.
 */
class PathOnArchTest {
  private static final long SEED = 29;
  private static final String NAME = "upper-16-23";

  private static Arch arch() {
    return arch(NAME);
  }

  private static Arch arch(String name) {
    return Arch.of(
        MeshTopology.of(
            MeshFiles.read(Shared.file("arches/" + name + ".ply"), Watch.NONE).toMesh()),
        Jaw.UPPER,
        FrameHints.NONE);
  }

  private static ToothLabels labels() throws IOException {
    return ToothLabels.of(Shared.labels(NAME));
  }

  private static PathSites sites(Arch arch) throws IOException {
    Dentition dentition = Dentition.of(arch, labels(), Chart.blank(Jaw.UPPER), Watch.NONE);
    return SiteFinder.find(
        arch, TriangleTree.of(arch.mesh()), dentition, PathRules.SHIPPED, PlaneRules.SHIPPED);
  }

  private static PathSearch search(Arch arch, PathSites sites) {
    return PathSearch.of(arch, sites, PathRules.SHIPPED, PlaneRules.SHIPPED, SurveyRules.SHIPPED);
  }

  private static List<Tilt> tilts() {
    Random random = new Random(SEED);
    return Stream.generate(
            () -> {
              double total = 14.9 * Math.sqrt(random.nextDouble());
              double turn = 2 * Math.PI * random.nextDouble();
              return new Tilt(total * Math.cos(turn), total * Math.sin(turn));
            })
        .limit(20)
        .toList();
  }

  @Test
  void theMapTurnsWithTheCast() throws IOException {
    Arch arch = arch();
    RigidMotion motion =
        RigidMotion.shift(new Vec3(31, -12, 77))
            .after(RigidMotion.turn(new Vec3(0.3, -0.8, 0.5), Math.toRadians(131)));
    ArchFrame frame = arch.frame().moved(motion);
    Arch turned =
        new Arch(
            MeshTopology.of(Reshape.each(arch.mesh(), motion::point)),
            AnatomicSurface.whole(arch.mesh()),
            frame);
    PathSearch here = search(arch, sites(arch));
    PathSearch there = search(turned, sites(turned));
    for (Tilt tilt : tilts()) {
      PathFactors a = here.at(tilt, Watch.NONE);
      PathFactors b = there.at(tilt, Watch.NONE);
      assertThat(b.axis().angleDegTo(motion.direction(a.axis()))).isLessThan(1e-3);
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        assertThat(b.figure(factor))
            .as("%s at %s, seed %s", factor.word(), tilt, SEED)
            .isCloseTo(a.figure(factor), within(0.01));
        assertThat(b.worth(factor))
            .as("worth of %s at %s, seed %s", factor.word(), tilt, SEED)
            .isCloseTo(a.worth(factor), within(0.01));
      }
    }
  }

  /** The patient's right half of a real arch and its mirror image: one tooth is missing a side. */
  @Test
  void aSymmetricCastGivesASymmetricMapInEveryFactor() throws IOException {
    String name = "upper-15-24";
    Arch arch = arch(name);
    ArchFrame frame = arch.frame();
    TriangleMesh upright = Reshape.each(arch.mesh(), p -> frame.toArch(p.minus(frame.origin())));
    int[] all = Shared.labels(name);
    boolean rightIsNegative = sideOf(upright, all, 1) < 0;
    IntPredicate right = t -> upright.pointOn(t, 1 / 3.0, 1 / 3.0).x() < 0 == rightIsNegative;
    TriangleMesh half = Reshape.only(upright, right);
    int[] here =
        IntStream.range(0, all.length)
            .filter(right)
            // The neighbour's corner that reaches over the middle stays gum.
            .map(t -> all[t] / 10 == 1 ? all[t] : ToothLabels.GUM)
            .toArray();
    int[] both =
        IntStream.concat(
                Arrays.stream(here), Arrays.stream(here).map(fdi -> fdi == 0 ? 0 : fdi + 10))
            .toArray();
    TriangleMesh cast = Reshape.joined(half, Reshape.mirrored(half));
    Arch symmetric =
        new Arch(
            MeshTopology.of(cast),
            AnatomicSurface.whole(cast),
            new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 0, 0));
    Dentition dentition =
        Dentition.of(symmetric, ToothLabels.of(both), Chart.blank(Jaw.UPPER), Watch.NONE);
    PathSites sites =
        SiteFinder.find(
            symmetric, TriangleTree.of(cast), dentition, PathRules.SHIPPED, PlaneRules.SHIPPED);
    assertThat(sites.abutments()).containsExactly(14, 16, 24, 26);
    assertThat(sites.planes()).isNotEmpty();
    assertThat(sites.fronts()).isNotEmpty();
    assertThat(sites.zones()).extracting(Zone::kind).contains(Zone.Kind.BASE, Zone.Kind.PALATE);
    PathMap map = search(symmetric, sites).map(8, Watch.NONE);
    for (PathFactors tilt : map.tilts()) {
      PathFactors mirrored =
          map.nearest(new Tilt(tilt.tilt().anteriorDeg(), -tilt.tilt().rightDeg()));
      assertThat(mirrored.worth())
          .as("worth at %s against %s", mirrored.tilt(), tilt.tilt())
          .isCloseTo(tilt.worth(), within(0.01 * tilt.worth()));
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        assertThat(mirrored.worth(factor))
            .as("%s at %s against %s", factor.word(), mirrored.tilt(), tilt.tilt())
            .isCloseTo(tilt.worth(factor), within(0.01));
      }
    }
  }

  /** Where the teeth of a quadrant lie across the arch, in the mean [mm]. */
  private static double sideOf(TriangleMesh mesh, int[] labels, int quadrant) {
    return IntStream.range(0, labels.length)
        .filter(t -> labels[t] / 10 == quadrant)
        .mapToDouble(t -> mesh.pointOn(t, 1 / 3.0, 1 / 3.0).x())
        .average()
        .orElseThrow();
  }

  @Test
  void whatATiltOffersIsWhatTheWholeCastSays() throws IOException {
    Arch arch = arch();
    PathSites sites = sites(arch);
    PathSearch search = search(arch, sites);
    Overhang.Caster whole = new Overhang.Caster(arch.topology(), BoundaryLoops.of(arch.topology()));
    OverhangLimits limits = new OverhangLimits(4, 0.5, 0.05);
    int held = 0;
    for (Tilt tilt : tilts()) {
      PathFactors factors = search.at(tilt, Watch.NONE);
      Overhang overhang = whole.along(factors.axis(), limits, Watch.NONE);
      for (Retention.Abutment abutment : factors.retention().abutments()) {
        assertThat(abutment.depthMm())
            .as("%s at %s, seed %s", abutment.tooth(), tilt, SEED)
            .isCloseTo(overhang.depthAt(abutment.place()), within(1e-4));
        held += abutment.depthMm() > 0.1 ? 1 : 0;
      }
      for (int i = 0; i < sites.zones().size(); i++) {
        double deepest = 0;
        for (Zone.Sample sample : sites.zones().get(i).samples()) {
          Vec3 towards = sample.towards();
          deepest =
              Math.max(
                  deepest,
                  towards == null
                      ? overhang.depthAt(sample.point())
                      : overhang.depthAlong(sample.point(), towards));
        }
        assertThat(factors.interference().zones().get(i).deepestMm())
            .as("zone %s at %s, seed %s", sites.zones().get(i).name(), tilt, SEED)
            .isCloseTo(deepest, within(1e-4));
      }
    }
    assertThat(held).isGreaterThan(20);
  }

  /** Common practice: a denture that replaces front teeth holds by back teeth of both sides. */
  @ParameterizedTest
  @CsvSource({
    "upper-11, 11, '12, 15, 16, 21, 25, 26'",
    "upper-16-23, '16, 23', '15, 17, 22, 24'",
    "upper-14, 14, '13, 15, 25, 26'"
  })
  void everySideHasABackToothAmongItsAbutments(String name, String missing, String likely)
      throws IOException {
    Arch arch = arch(name);
    Chart chart = Chart.missing(Jaw.UPPER, numbers(missing));
    Dentition dentition =
        Dentition.of(arch, ToothLabels.of(Shared.labels(name)), chart, Watch.NONE);
    assertThat(SiteFinder.likelyAbutments(dentition)).containsExactlyElementsOf(numbers(likely));
  }

  private static SortedSet<ToothNumber> numbers(String text) {
    SortedSet<ToothNumber> numbers = new TreeSet<>();
    for (String fdi : text.split(", ", -1)) {
      numbers.add(ToothNumber.of(Integer.parseInt(fdi)));
    }
    return numbers;
  }
}
