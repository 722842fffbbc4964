package rodwork.app.operation;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.ArchState;
import rodwork.anatomy.kennedy.Kennedy;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.teeth.ToothFinder;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;

/**
 * An opened cast with its teeth, as far as they could be found from what a person said. Immutable.
 *
 * @param cast the cast
 * @param chart what the person said, as a chart
 * @param finding the tooth of each triangle; null where none could be told
 * @param dentition what was measured on them; null likewise
 * @param problem why none could be told; null where some were
 * @param kennedy the class: from the scan where it shows what the chart says, else from the chart
 */
public record FoundTeeth(
    OpenedCast cast,
    Chart chart,
    @Nullable ToothFinding finding,
    @Nullable Dentition dentition,
    @Nullable Refusal problem,
    KennedyFinding kennedy) {

  /**
   * Finds the teeth of a cast.
   *
   * @throws Refusal if jaw or frame of the cast are not known; what keeps the finder from telling
   *     teeth is no refusal here
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static FoundTeeth of(OpenedCast cast, ToothHints hints, Watch watch) {
    if (cast.jaw() == Jaw.UNKNOWN) {
      throw AppRefusal.TEETH_NEED_JAW.with();
    }
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    Chart chart = chart(cast.jaw(), hints);
    KennedyFinding ofChart = Kennedy.classify(ArchState.of(chart));
    try {
      ToothFinding finding = ToothFinder.find(arch, hints, watch);
      Dentition dentition = Dentition.of(arch, finding.labels(), chart, watch);
      boolean agreed = dentition.standing().equals(chart.standing());
      return new FoundTeeth(
          cast, chart, finding, dentition, null, agreed ? dentition.kennedy() : ofChart);
    } catch (Refusal refused) {
      return new FoundTeeth(cast, chart, null, null, refused, ofChart);
    }
  }

  /** Missing teeth as said; a third molar that was pointed at stands. */
  private static Chart chart(Jaw jaw, ToothHints hints) {
    Set<ToothNumber> missing =
        hints.missing().stream()
            .map(ToothNumber::of)
            .collect(Collectors.toCollection(TreeSet::new));
    Chart chart = Chart.missing(jaw, missing);
    for (ToothHints.Point point : hints.points()) {
      chart = chart.with(ToothNumber.of(point.fdi()), ToothEntry.PRESENT);
    }
    return chart;
  }
}
