package rodwork.app.operation;

import java.util.Set;
import java.util.stream.Collectors;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothFinder;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.geometry.Watch;

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
    Set<Integer> missing =
        chart.missing().stream().map(ToothNumber::fdi).collect(Collectors.toSet());
    for (ToothHints.Point point : wanted.points()) {
      if (missing.contains(point.fdi())) {
        throw AppRefusal.POINT_OF_MISSING.with(point.fdi());
      }
    }
    ToothFinding finding = ToothFinder.find(arch, new ToothHints(missing, wanted.points()), watch);
    return new CastTeeth(cast, arch, finding, Dentition.of(arch, finding.labels(), chart, watch));
  }
}
