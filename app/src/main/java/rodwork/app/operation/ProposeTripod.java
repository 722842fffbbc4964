package rodwork.app.operation;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.geometry.Watch;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodPlaces;
import rodwork.survey.tripod.TripodRules;
import rodwork.survey.tripod.Unprepared;

/** Proposes tripod marks on a cast, away from what mouth preparation will change. */
public final class ProposeTripod {
  private ProposeTripod() {}

  /**
   * Marks off the likely abutments, where the teeth are known.
   *
   * @param dentition null: nothing is known of the teeth
   * @throws rodwork.geometry.Refusal {@code tripod-no-place}
   */
  public static Tripod of(
      OpenedCast cast, TripodPlaces places, @Nullable Dentition dentition, Watch watch) {
    return dentition == null
        ? places.best(Unprepared.unknown(), watch)
        : of(cast, places, dentition, SiteFinder.likelyAbutments(dentition), watch);
  }

  /**
   * Marks off the teeth that will be prepared.
   *
   * @throws rodwork.geometry.Refusal {@code tripod-no-place}
   */
  public static Tripod of(
      OpenedCast cast,
      TripodPlaces places,
      Dentition dentition,
      Collection<ToothNumber> prepared,
      Watch watch) {
    List<IntPredicate> unchanged = Unprepared.of(cast.mesh(), dentition, prepared);
    return places.best(unchanged, watch);
  }

  /**
   * How each mark is set with dividers; empty where no two landmarks fix it, or no teeth are known.
   */
  public static List<Optional<MarkBearings>> bearings(
      OpenedCast cast, Tripod tripod, @Nullable Dentition dentition, TripodRules rules) {
    return dentition == null
        ? tripod.marks().stream().map(mark -> Optional.<MarkBearings>empty()).toList()
        : MarkBearings.of(tripod, cast.mesh(), dentition, rules.picking().value());
  }
}
