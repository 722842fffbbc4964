package rodwork.anatomy.teeth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.SharedArch;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** A real arch with the labels of its data's authors, and how well other labels agree with them. */
record LabelledArch(String name, Arch arch, ToothLabels truth) {

  static final String[] NAMES = {
    "upper-full", "upper-15-24", "upper-16-23", "upper-17-27",
    "upper-14", "upper-11", "lower-35", "lower-35-37-47"
  };

  static LabelledArch load(String name) {
    SharedArch shared = SharedArch.load(name);
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    Arch arch = Arch.of(MeshTopology.of(shared.mesh()), jaw, FrameHints.NONE);
    int[] labels = shared.labels();
    if (name.equals("upper-11")) {
      mend(arch, labels);
    }
    return new LabelledArch(name, arch, ToothLabels.of(labels));
  }

  /** The same arch as a scan of sixteen times the triangles, as smooth as it can be. */
  LabelledArch dense() {
    TriangleMesh mesh = LoopSubdivision.of(LoopSubdivision.of(arch.mesh()));
    int[] labels = new int[mesh.triangleCount()];
    Arrays.setAll(labels, t -> truth.of(t / 16));
    Arch there = new Arch(MeshTopology.of(mesh), AnatomicSurface.whole(mesh), arch.frame());
    return new LabelledArch(name + ", dense", there, ToothLabels.of(labels));
  }

  /**
   * The file calls two teeth 16: the first molar, and the central incisor between 12 and 21, 31 mm
   * before it. The latter is 11, which is not missing.
   */
  private static void mend(Arch arch, int[] labels) {
    for (int t = 0; t < labels.length; t++) {
      Vec3 at = arch.mesh().pointOn(t, 1.0 / 3, 1.0 / 3).minus(arch.frame().origin());
      if (labels[t] == 16 && at.dot(arch.frame().y()) > 15) {
        labels[t] = 11;
      }
    }
  }

  /** The numbers up to the second molars that have no label. */
  Set<Integer> missing() {
    Set<Integer> missing = new TreeSet<>();
    for (int fdi : UsualCrown.row(arch.frame().jaw() == Jaw.UPPER)) {
      if (fdi % 10 < 8 && !truth.numbers().contains(fdi)) {
        missing.add(fdi);
      }
    }
    return missing;
  }

  List<ToothHints.Point> points() {
    return truth.numbers().stream().map(fdi -> new ToothHints.Point(fdi, top(fdi))).toList();
  }

  /** The highest of the eight triangles of a tooth nearest to its axis. */
  private Vec3 top(int fdi) {
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

  /** Twice the common area over the sum of both areas, for each tooth that has a label. */
  Map<Integer, Double> dice(ToothLabels found) {
    Map<Integer, Double> dice = new TreeMap<>();
    for (int fdi : truth.numbers()) {
      double both = 0;
      for (int t = 0; t < truth.triangleCount(); t++) {
        if (truth.of(t) == fdi && found.of(t) == fdi) {
          both += arch.mesh().area(t);
        }
      }
      double areas = truth.area(fdi, arch.mesh()) + found.area(fdi, arch.mesh());
      dice.put(fdi, 2 * both / areas);
    }
    return dice;
  }

  /** Mean distance from the edges of found teeth to the edge of their label [mm]. */
  double marginOff(ToothLabels found) {
    double sum = 0;
    int count = 0;
    for (int fdi : truth.numbers()) {
      List<Vec3> there = edges(truth, fdi);
      for (Vec3 here : edges(found, fdi)) {
        sum += there.stream().mapToDouble(here::distance).min().orElseThrow();
        count++;
      }
    }
    return sum / count;
  }

  private List<Vec3> edges(ToothLabels labels, int fdi) {
    MeshTopology topology = arch.topology();
    List<Vec3> edges = new ArrayList<>();
    for (int e = 0; e < topology.edgeCount(); e++) {
      int second = topology.edgeTriangle(e, 1);
      if (second >= 0
          && (labels.of(topology.edgeTriangle(e, 0)) == fdi) != (labels.of(second) == fdi)) {
        edges.add(
            arch.mesh()
                .vertex(topology.edgeVertex(e, 0))
                .plus(arch.mesh().vertex(topology.edgeVertex(e, 1)))
                .times(0.5));
      }
    }
    return edges;
  }
}
