package rodwork.survey.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
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
    return Arch.of(
        MeshTopology.of(
            MeshFiles.read(Shared.file("arches/" + NAME + ".ply"), Watch.NONE).toMesh()),
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
    Arch arch =
        Arch.of(
            MeshTopology.of(
                MeshFiles.read(Shared.file("arches/" + name + ".ply"), Watch.NONE).toMesh()),
            Jaw.UPPER,
            FrameHints.NONE);
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
