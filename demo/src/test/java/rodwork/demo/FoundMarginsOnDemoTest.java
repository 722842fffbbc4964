package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.teeth.ToothFinder;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Teeth;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleTree;

/**
 * Teeth and margins found on the demo casts from the missing teeth alone, as from any scan, against
 * what the casts were made from.
 */
class FoundMarginsOnDemoTest {
  /** The mark of the project [mm]. */
  private static final double MARGIN_MM = 0.3;

  /** A true margin farther than this from the mesh lies within a contact [mm]. */
  private static final double ON_CAST_MM = 0.25;

  @ParameterizedTest
  @EnumSource(names = {"UPPER", "LOWER"})
  void liesWhereItWasMade(Jaw jaw) {
    DemoCast cast = Casts.of(jaw);
    Arch arch = Arch.of(MeshTopology.of(cast.mesh()), jaw, FrameHints.NONE);
    ToothHints hints = new ToothHints(Set.copyOf(cast.missing()), List.of());
    ToothLabels labels = ToothFinder.find(arch, hints, Watch.NONE).labels();
    Teeth teeth = Teeth.of(arch, labels, jaw, Watch.NONE);
    TriangleTree tree = TriangleTree.of(cast.mesh());
    assertThat(teeth.byNumber()).hasSize(cast.teeth().size());
    for (Tooth tooth : teeth.byNumber().values()) {
      DemoTooth truth = cast.tooth(tooth.number().fdi());
      GingivalMargin margin = tooth.margin();
      double off = meanDistance(seen(margin), truth.margin());
      List<Vec3> onCast =
          truth.margin().stream().filter(p -> tree.closest(p, ON_CAST_MM).isPresent()).toList();
      double missed = meanDistance(onCast, margin.points());
      double dice = dice(cast, labels, truth.fdi());
      System.out.printf(
          Locale.ROOT,
          "%d found: margin %.2f mm off, the true one %.2f mm from it, Dice %.3f%n",
          truth.fdi(),
          off,
          missed,
          dice);
      assertThat(off).as("margin of %s", tooth).isLessThan(MARGIN_MM);
      // The other way round: no part of the true margin is left out.
      assertThat(missed).as("true margin of %s", tooth).isLessThan(MARGIN_MM);
      assertThat(dice).as("surface of %s", tooth).isGreaterThan(0.97);
    }
  }

  private static List<Vec3> seen(GingivalMargin margin) {
    return IntStream.range(0, margin.points().size())
        .filter(i -> margin.kinds().get(i) == GingivalMargin.Kind.SEEN)
        .mapToObj(margin.points()::get)
        .toList();
  }

  private static double meanDistance(List<Vec3> points, List<Vec3> line) {
    return points.stream().mapToDouble(p -> distance(p, line)).average().orElseThrow();
  }

  private static double distance(Vec3 p, List<Vec3> line) {
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < line.size(); j++) {
      Vec3 a = line.get(j);
      Vec3 b = line.get((j + 1) % line.size()).minus(a);
      double along = Math.clamp(p.minus(a).dot(b) / Math.max(1e-12, b.dot(b)), 0, 1);
      least = Math.min(least, p.distance(a.plus(b.times(along))));
    }
    return least;
  }

  private static double dice(DemoCast cast, ToothLabels labels, int fdi) {
    double both = 0;
    double areas = 0;
    for (int t = 0; t < labels.triangleCount(); t++) {
      double area = cast.mesh().area(t);
      int of = (cast.label(t) == fdi ? 1 : 0) + (labels.of(t) == fdi ? 1 : 0);
      areas += of * area;
      both += of == 2 ? area : 0;
    }
    return 2 * both / areas;
  }
}
