package rodwork.anatomy.teeth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.SharedArch;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;

class ToothFinderTest {
  /**
   * Truth: the labels of the data's authors. A floor against getting worse, set from the first
   * measurement; the mark of the project is a mean of 0.95.
   */
  private static final double FLOOR = 0.80;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "upper-full", "upper-15-24", "upper-16-23", "upper-17-27",
        "upper-14", "upper-11", "lower-35", "lower-35-37-47"
      })
  void agreesWithTheLabelsFromOnePointATooth(String name) {
    SharedArch shared = SharedArch.load(name);
    Arch arch = arch(shared);
    ToothLabels truth = ToothLabels.of(shared.labels());
    List<ToothHints.Point> points = new ArrayList<>();
    for (int fdi : truth.numbers()) {
      points.add(new ToothHints.Point(fdi, top(arch, truth, fdi)));
    }
    long start = System.nanoTime();
    ToothFinding found = ToothFinder.find(arch, new ToothHints(Set.of(), points), Watch.NONE);
    double ms = (System.nanoTime() - start) / 1e6;
    double sum = 0;
    double least = 1;
    StringBuilder each = new StringBuilder();
    for (int fdi : truth.numbers()) {
      double dice = dice(arch, truth, found.labels(), fdi);
      sum += dice;
      least = Math.min(least, dice);
      each.append(String.format(" %d:%.2f", fdi, dice));
    }
    double mean = sum / truth.numbers().size();
    System.out.printf("%s mean %.3f least %.3f, %.0f ms;%s%n", name, mean, least, ms, each);
    assertThat(found.labels().numbers()).isEqualTo(truth.numbers());
    assertThat(mean).as(each.toString()).isGreaterThan(FLOOR);
  }

  @Test
  void saysWhatToDoWithoutPointsOrWithOneOffTheCast() {
    Arch arch = arch(SharedArch.load("upper-full"));
    assertThatThrownBy(() -> ToothFinder.find(arch, ToothHints.NONE, Watch.NONE))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("without a point on each");
    ToothHints off =
        new ToothHints(Set.of(), List.of(new ToothHints.Point(11, new Vec3(999, 0, 0))));
    assertThatThrownBy(() -> ToothFinder.find(arch, off, Watch.NONE))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("tooth 11");
  }

  private static Arch arch(SharedArch shared) {
    Jaw jaw = shared.name().startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    return Arch.of(MeshTopology.of(shared.mesh()), jaw, FrameHints.NONE);
  }

  /** The highest of the eight triangles of a tooth nearest to its axis. */
  private static Vec3 top(Arch arch, ToothLabels truth, int fdi) {
    Vec3 up = arch.frame().z();
    List<Vec3> centres =
        IntStream.range(0, truth.triangleCount())
            .filter(t -> truth.of(t) == fdi)
            .mapToObj(t -> arch.mesh().pointOn(t, 1.0 / 3, 1.0 / 3))
            .toList();
    Vec3 middle = centres.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / centres.size());
    return centres.stream()
        .sorted(Comparator.comparingDouble(c -> c.minus(middle).across(up).length()))
        .limit(8)
        .max(Comparator.comparingDouble(c -> c.dot(up)))
        .orElseThrow();
  }

  private static double dice(Arch arch, ToothLabels truth, ToothLabels found, int fdi) {
    double both = 0;
    for (int t = 0; t < truth.triangleCount(); t++) {
      if (truth.of(t) == fdi && found.of(t) == fdi) {
        both += arch.mesh().area(t);
      }
    }
    return 2 * both / (truth.area(fdi, arch.mesh()) + found.area(fdi, arch.mesh()));
  }
}
