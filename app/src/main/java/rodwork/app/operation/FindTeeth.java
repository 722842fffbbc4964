package rodwork.app.operation;

import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothFinder;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.app.AppRefusal;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.FileMap;

/** Finds and measures the teeth of an opened cast. */
public final class FindTeeth {
  private FindTeeth() {}

  /**
   * Finds them from what a person says.
   *
   * @throws rodwork.geometry.Refusal if the frame or the jaw is not known, or no teeth are found
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static CastTeeth of(OpenedCast cast, WantedTeeth wanted, Watch watch) {
    Jaw jaw = wanted.jaw(cast.jaw());
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame().withJaw(jaw));
    Chart chart = wanted.chart(jaw);
    Set<Integer> missing = missing(chart);
    for (ToothHints.Point point : wanted.points()) {
      if (missing.contains(point.fdi())) {
        throw AppRefusal.POINT_OF_MISSING.with(ToothNumber.of(point.fdi()));
      }
    }
    ToothFinding finding = ToothFinder.find(arch, new ToothHints(missing, wanted.points()), watch);
    return new CastTeeth(
        cast, arch, finding, Dentition.of(arch, finding.labels(), chart, cast.spaces(), watch));
  }

  /**
   * Finds them as on the bench, where what a person points at corrects what is found without.
   *
   * @param chart of the jaw
   * @param hints by the missing teeth of the chart
   * @throws rodwork.geometry.Refusal if the frame is not known, or no teeth are found
   */
  public static CastTeeth corrected(
      OpenedCast cast, Chart chart, Function<Set<Integer>, ToothHints> hints, Watch watch) {
    return FoundTeeth.of(cast.withJaw(chart.jaw()), hints.apply(missing(chart)), chart, null, watch)
        .told();
  }

  private static Set<Integer> missing(Chart chart) {
    return chart.missing().stream().map(ToothNumber::fdi).collect(Collectors.toSet());
  }

  /**
   * Takes the teeth from labels that are known.
   *
   * @param ofFile FDI number or 0 of each triangle, in the order of the scan file
   * @throws rodwork.geometry.Refusal if they are not as many as the file's triangles, or the frame
   *     or the jaw is not known
   */
  public static CastTeeth labelled(OpenedCast cast, WantedTeeth wanted, int[] ofFile, Watch watch) {
    FileMap files = cast.cast().files();
    if (ofFile.length != files.fileTriangleCount()) {
      throw AppRefusal.LABELS_OF_ANOTHER_SCAN.with(ofFile.length, files.fileTriangleCount());
    }
    int[] labels = new int[cast.mesh().triangleCount()];
    for (int t = 0; t < labels.length; t++) {
      int file = files.fileTriangle(t);
      labels[t] = file < 0 ? ToothLabels.GUM : ofFile[file];
    }
    ToothLabels known = ToothLabels.of(labels);
    Jaw jaw = wanted.jaw(cast.jaw() == Jaw.UNKNOWN ? jawOf(known) : cast.jaw());
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame().withJaw(jaw));
    return new CastTeeth(
        cast,
        arch,
        new ToothFinding(known, Map.of()),
        Dentition.of(arch, known, wanted.chart(jaw), cast.spaces(), watch));
  }

  private static Jaw jawOf(ToothLabels labels) {
    return labels.numbers().stream()
        .findFirst()
        .map(fdi -> ToothNumber.of(fdi).jaw())
        .orElse(Jaw.UNKNOWN);
  }
}
