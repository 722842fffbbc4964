package rodwork.anatomy.dentition;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;

/** A real arch of the shared folder with the labels that its authors made. */
public record LabelledArch(String name, Arch arch, ToothLabels labels, Chart chart) {
  public static final List<String> NAMES =
      List.of(
          "upper-full",
          "upper-15-24",
          "upper-16-23",
          "upper-17-27",
          "upper-14",
          "upper-11",
          "lower-35",
          "lower-35-37-47");

  public static LabelledArch load(String name) {
    Path ply = Shared.file("arches/" + name + ".ply");
    Path file = Shared.file("arches/" + name + ".labels.json");
    try {
      String text = Files.readString(file).strip();
      int[] fdi =
          Arrays.stream(text.substring(1, text.length() - 1).split(",", -1))
              .mapToInt(s -> Integer.parseInt(s.strip()))
              .toArray();
      return of(name, MeshFiles.read(ply, Watch.NONE).toMesh(), ToothLabels.of(fdi));
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** An arch with a chart that calls missing what has no label. */
  public static LabelledArch of(String name, TriangleMesh mesh, ToothLabels labels) {
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    Set<Integer> there = labels.numbers();
    List<ToothNumber> missing =
        ToothNumber.allOf(jaw).filter(t -> !t.isThirdMolar() && !there.contains(t.fdi())).toList();
    return new LabelledArch(
        name,
        Arch.of(MeshTopology.of(mesh), jaw, FrameHints.NONE),
        labels,
        Chart.missing(jaw, missing));
  }

  public Dentition dentition() {
    return Dentition.of(arch, labels, chart, Watch.NONE);
  }
}
