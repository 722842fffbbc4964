package rodwork.app.operation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.ArchState;
import rodwork.anatomy.kennedy.Kennedy;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.teeth.ToothFinder;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Tooth;
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
 * @param hints what the person said of the teeth on the scan
 * @param chart what the person said, as a chart
 * @param unaided the teeth found from the missing ones alone; null where none could be told
 * @param finding the tooth of each triangle; null where none could be told
 * @param dentition what was measured on them; null likewise
 * @param problem why none could be told; null where some were
 * @param kennedy the class: from the scan where it shows the teeth that a person named as standing,
 *     else from the chart
 */
public record FoundTeeth(
    OpenedCast cast,
    ToothHints hints,
    Chart chart,
    @Nullable Dentition unaided,
    @Nullable ToothFinding finding,
    @Nullable Dentition dentition,
    @Nullable Refusal problem,
    KennedyFinding kennedy) {

  /**
   * Finds the teeth of a cast.
   *
   * @param said what the person knows of the teeth beside where they are on the scan
   * @param before what was last found on it, which may save most of the work; null: nothing
   * @throws Refusal if the frame of the cast is not known; what keeps the finder from telling teeth
   *     is no refusal here
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static FoundTeeth of(
      OpenedCast cast, ToothHints hints, Chart said, @Nullable FoundTeeth before, Watch watch) {
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    Chart chart = chart(said, hints);
    FoundTeeth known = before != null && before.cast.equals(cast) ? before : null;
    if (known != null && known.hints.equals(hints) && known.finding != null) {
      // What the chart says beside changes no label.
      Dentition dentition = Dentition.of(arch, known.finding.labels(), chart, cast.spaces(), watch);
      return found(cast, hints, chart, known.unaided, known.finding, dentition);
    }
    boolean alone = hints.points().isEmpty() && hints.pins().isEmpty();
    Dentition unaided = null;
    try {
      ToothHints missingAlone = new ToothHints(hints.missing(), List.of());
      if (known != null
          && known.unaided != null
          && known.hints.missing().equals(hints.missing())
          && !alone) {
        unaided = known.unaided;
      } else {
        ToothFinding finding = ToothFinder.find(arch, missingAlone, watch);
        unaided =
            Dentition.of(arch, finding.labels(), chart(said, missingAlone), cast.spaces(), watch);
        if (alone) {
          return found(cast, hints, chart, unaided, finding, unaided);
        }
      }
    } catch (Refusal refused) {
      if (alone) {
        return untold(cast, hints, chart, null, refused);
      }
    }
    try {
      ToothHints all = unaided == null ? hints : corrected(arch.mesh(), unaided, hints);
      ToothFinding finding = ToothFinder.find(arch, all, watch);
      Dentition dentition = Dentition.of(arch, finding.labels(), chart, cast.spaces(), watch);
      return found(cast, hints, chart, unaided, finding, dentition);
    } catch (Refusal refused) {
      return untold(cast, hints, chart, unaided, refused);
    }
  }

  /**
   * The cast with its teeth.
   *
   * @throws Refusal why none could be told
   */
  public CastTeeth told() {
    ToothFinding told = finding;
    Dentition measured = dentition;
    if (told == null || measured == null) {
      throw problem == null ? new IllegalStateException("no teeth, no reason") : problem;
    }
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    return new CastTeeth(cast, arch, told, measured);
  }

  private static FoundTeeth found(
      OpenedCast cast,
      ToothHints hints,
      Chart chart,
      @Nullable Dentition unaided,
      ToothFinding finding,
      Dentition dentition) {
    // The scan is taken at its word, unless a person named a tooth that it does not show.
    boolean agreed =
        dentition.standing().containsAll(chart.standing().stream().filter(chart::names).toList());
    KennedyFinding kennedy = agreed ? dentition.kennedy() : Kennedy.classify(ArchState.of(chart));
    return new FoundTeeth(cast, hints, chart, unaided, finding, dentition, null, kennedy);
  }

  private static FoundTeeth untold(
      OpenedCast cast,
      ToothHints hints,
      Chart chart,
      @Nullable Dentition unaided,
      Refusal refused) {
    KennedyFinding kennedy = Kennedy.classify(ArchState.of(chart));
    return new FoundTeeth(cast, hints, chart, unaided, null, null, refused, kennedy);
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
      int fdi = tooth.number().fdi();
      Vec3 top = onTop(mesh, tooth);
      // A pin of another tooth over the top of this one joins the two.
      boolean joined =
          hints.pins().stream()
              .anyMatch(
                  pin ->
                      pin.fdi() != ToothLabels.GUM
                          && pin.fdi() != fdi
                          && pin.at().distance(top) <= pin.radius());
      if (!given.contains(fdi) && !joined) {
        points.add(new ToothHints.Point(fdi, top));
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

  /** What was said, with teeth missing that are called so, and standing that were pointed at. */
  private static Chart chart(Chart said, ToothHints hints) {
    Chart chart = said;
    for (int fdi : hints.missing()) {
      chart = chart.change(ToothNumber.of(fdi), e -> e.withPresence(Presence.MISSING));
    }
    for (ToothHints.Point point : hints.points()) {
      ToothNumber tooth = ToothNumber.of(point.fdi());
      if (chart.tooth(tooth).presence() == Presence.MISSING) {
        chart = chart.change(tooth, e -> e.withPresence(Presence.PRESENT));
      } else {
        chart = chart.with(tooth, chart.tooth(tooth));
      }
    }
    return chart;
  }
}
