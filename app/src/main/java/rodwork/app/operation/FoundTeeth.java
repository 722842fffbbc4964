package rodwork.app.operation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
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
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * An opened cast with its teeth, as far as they could be found from what a person said. Immutable.
 *
 * <p>What a person points at is a correction: teeth that are found without it stay, except those
 * that the point or its number belongs to.
 *
 * @param cast the cast
 * @param chart what the person said, as a chart
 * @param unaided the teeth found from the missing ones alone; null where none could be told
 * @param finding the tooth of each triangle; null where none could be told
 * @param dentition what was measured on them; null likewise
 * @param problem why none could be told; null where some were
 * @param kennedy the class: from the scan where it shows what the chart says, else from the chart
 */
public record FoundTeeth(
    OpenedCast cast,
    Chart chart,
    @Nullable Dentition unaided,
    @Nullable ToothFinding finding,
    @Nullable Dentition dentition,
    @Nullable Refusal problem,
    KennedyFinding kennedy) {

  /**
   * Finds the teeth of a cast.
   *
   * @param before what was last found on it, which may save half the work; null: nothing
   * @throws Refusal if jaw or frame of the cast are not known; what keeps the finder from telling
   *     teeth is no refusal here
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static FoundTeeth of(
      OpenedCast cast, ToothHints hints, @Nullable FoundTeeth before, Watch watch) {
    if (cast.jaw() == Jaw.UNKNOWN) {
      throw AppRefusal.TEETH_NEED_JAW.with();
    }
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    Chart chart = chart(cast.jaw(), hints);
    KennedyFinding ofChart = Kennedy.classify(ArchState.of(chart));
    boolean alone = hints.points().isEmpty() && hints.pins().isEmpty();
    Dentition unaided = null;
    try {
      ToothHints missingAlone = new ToothHints(hints.missing(), List.of());
      if (before != null
          && before.unaided != null
          && before.cast.equals(cast)
          && before.chart.missing().equals(chart.missing())
          && !alone) {
        unaided = before.unaided;
      } else {
        ToothFinding finding = ToothFinder.find(arch, missingAlone, watch);
        unaided = Dentition.of(arch, finding.labels(), chart(cast.jaw(), missingAlone), watch);
        if (alone) {
          return found(cast, chart, unaided, finding, unaided, ofChart);
        }
      }
    } catch (Refusal refused) {
      if (alone) {
        return new FoundTeeth(cast, chart, null, null, null, refused, ofChart);
      }
    }
    try {
      ToothHints all = unaided == null ? hints : corrected(arch.mesh(), unaided, hints);
      ToothFinding finding = ToothFinder.find(arch, all, watch);
      Dentition dentition = Dentition.of(arch, finding.labels(), chart, watch);
      return found(cast, chart, unaided, finding, dentition, ofChart);
    } catch (Refusal refused) {
      return new FoundTeeth(cast, chart, unaided, null, null, refused, ofChart);
    }
  }

  private static FoundTeeth found(
      OpenedCast cast,
      Chart chart,
      @Nullable Dentition unaided,
      ToothFinding finding,
      Dentition dentition,
      KennedyFinding ofChart) {
    boolean agreed = dentition.standing().equals(chart.standing());
    return new FoundTeeth(
        cast, chart, unaided, finding, dentition, null, agreed ? dentition.kennedy() : ofChart);
  }

  /** A point on each tooth found, with the person's own in their places. */
  private static ToothHints corrected(TriangleMesh mesh, Dentition unaided, ToothHints hints) {
    Set<Integer> given = new HashSet<>();
    for (ToothHints.Point point : hints.points()) {
      given.add(point.fdi());
      given.add(unaided.labels().of(nearest(mesh, point.at())));
    }
    List<ToothHints.Point> points = new ArrayList<>(hints.points());
    for (Tooth tooth : unaided.inOrder()) {
      if (!given.contains(tooth.number().fdi())) {
        points.add(new ToothHints.Point(tooth.number().fdi(), onTop(mesh, tooth)));
      }
    }
    return new ToothHints(hints.missing(), points, hints.pins());
  }

  /** The place of the surface nearest to the middle of the top of a crown. */
  public static Vec3 onTop(TriangleMesh mesh, Tooth tooth) {
    double up = Math.max(tooth.size().facialHeightMm(), tooth.size().lingualHeightMm());
    Vec3 top = tooth.axes().toScan(new Vec3(0, 0, up));
    Vec3 best = tooth.centroid();
    double least = Double.POSITIVE_INFINITY;
    for (int t : tooth.copyOfTriangles()) {
      Vec3 at = mesh.pointOn(t, 1.0 / 3, 1.0 / 3);
      double off = at.minus(top).length();
      if (off < least) {
        least = off;
        best = at;
      }
    }
    return best;
  }

  private static int nearest(TriangleMesh mesh, Vec3 point) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double off = mesh.pointOn(t, 1.0 / 3, 1.0 / 3).minus(point).length();
      if (off < least) {
        least = off;
        best = t;
      }
    }
    return best;
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
