package rodwork.design.abutment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.PlaceEntry;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.BitingPlaces;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.Fact;
import rodwork.geometry.Vec3;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;

/**
 * What the chart and the standing of a tooth in its row tell of it as an abutment. What neither
 * tells stays not known, with the question that would settle it.
 */
final class ToothFacts {
  private final Arch arch;
  private final Dentition dentition;
  private final SortedSet<ToothNumber> abutments;
  private final AbutmentRules.Limits limits;
  private final OpposingRoom opposing;

  /**
   * For one arch.
   *
   * @param abutments the likely ones: the axis of rotation runs through the rearmost
   * @param opposing the room to the other jaw
   */
  ToothFacts(
      Arch arch,
      Dentition dentition,
      SortedSet<ToothNumber> abutments,
      AbutmentRules.Limits limits,
      OpposingRoom opposing) {
    this.arch = arch;
    this.dentition = dentition;
    this.abutments = abutments;
    this.limits = limits;
    this.opposing = opposing;
  }

  /** The facts of a tooth as an abutment for what lies on one of its sides. */
  Map<Fact, Reading> of(Tooth tooth, Surface side) {
    Map<Fact, Reading> facts = new EnumMap<>(Fact.class);
    ToothNumber number = tooth.number();
    ToothEntry entry = dentition.chart().tooth(number);
    PlaceEntry place = dentition.chart().place(number);
    Optional<Space> space = dentition.spaceBeside(number, side);
    Optional<Space> other = dentition.spaceBeside(number, side.opposite());
    facts.put(Fact.ADJACENT_SPACE, Reading.yes(space.isPresent()));
    facts.put(Fact.FREE_END, Reading.yes(space.filter(Space::freeEnd).isPresent()));
    facts.put(Fact.FREE_END_BEYOND, Reading.yes(other.filter(Space::freeEnd).isPresent()));
    facts.put(Fact.ISOLATED, Reading.yes(space.isPresent() && other.isPresent()));
    facts.put(Fact.SHOWS, said(entry.aestheticZone(), "whether the tooth shows in a smile"));
    facts.put(Fact.MOBILE, mobile(entry.mobility()));
    facts.put(Fact.SHORT_ROOT, shortRoot(entry));
    facts.put(Fact.DISPLACEABLE_TISSUE, displaceable(number.side()));
    facts.put(Fact.FRENUM, said(place.facialFrenum(), "a frenum near the facial margin"));
    facts.put(Fact.AHEAD_OF_AXIS, aheadOfAxis(tooth));
    facts.put(Fact.TIPPING, tipping(tooth, side));
    facts.put(Fact.LINGUAL_INCLINATION, lingually(tooth));
    facts.put(Fact.FAR_REST, rest(tooth, entry, side.opposite()));
    facts.put(Fact.NEAR_REST, rest(tooth, entry, side));
    facts.put(Fact.OCCLUSAL_ROOM, embrasure(tooth, entry, side));
    facts.put(Fact.POOR_HYGIENE, unknown("oral hygiene"));
    facts.put(Fact.HEAVY_HANDLING, unknown("how the patient handles a denture"));
    place
        .vestibuleDepthMm()
        .ifPresent(mm -> facts.put(Fact.VESTIBULE_DEPTH, new Reading.Measured(mm, 0, "mm")));
    return facts;
  }

  private static Reading unknown(String what) {
    return new Reading.NotKnown("not asked: " + what);
  }

  private static Reading said(Answer answer, String what) {
    return answer.known() ? Reading.yes(answer == Answer.YES) : unknown(what);
  }

  private static Reading mobile(ToothEntry.Mobility mobility) {
    return switch (mobility) {
      case NOT_KNOWN -> unknown("mobility");
      case NONE -> Reading.yes(false);
      case I, II, III -> Reading.yes(true);
    };
  }

  private Reading shortRoot(ToothEntry entry) {
    return entry.crownToRoot().isEmpty()
        ? unknown("crown-to-root ratio")
        : Reading.yes(entry.crownToRoot().getAsDouble() > limits.crownToRootMost().value());
  }

  private Reading displaceable(Side side) {
    Firmness firmness = dentition.chart().freeEnd(side);
    return switch (firmness) {
      case NOT_KNOWN -> unknown("firmness of the tissue of the free end");
      case FIRM -> Reading.yes(false);
      case YIELDING, FLABBY -> Reading.yes(true);
    };
  }

  /** Without a free end a denture does not turn; else about the rearmost abutments. */
  private Reading aheadOfAxis(Tooth tooth) {
    if (dentition.openSpaces().stream().noneMatch(Space::freeEnd)) {
      return Reading.yes(false);
    }
    Optional<Vec3> right = rearmost(Side.RIGHT);
    Optional<Vec3> left = rearmost(Side.LEFT);
    if (right.isEmpty() || left.isEmpty()) {
      return new Reading.NotKnown("one side has no abutment, so the axis of rotation is not known");
    }
    Vec3 along = left.get().minus(right.get());
    Vec3 ahead = arch.frame().y().across(along.across(arch.frame().z()));
    if (ahead.length() < 1e-6) {
      return new Reading.NotKnown("the axis of rotation runs from front to back");
    }
    double way = tooth.centroid().minus(right.get()).dot(ahead.unit());
    return Reading.yes(way > limits.aheadFrom().value());
  }

  private Optional<Vec3> rearmost(Side side) {
    return abutments.stream()
        .filter(t -> t.side() == side)
        .max(Comparator.comparingInt(ToothNumber::place))
        .flatMap(dentition::tooth)
        .map(Tooth::centroid);
  }

  private Reading tipping(Tooth tooth, Surface side) {
    double towards = leanDeg(tooth, tooth.axes().outOf(side));
    double facial = leanDeg(tooth, tooth.axes().facial());
    String sure = surely(Math.max(Math.abs(towards), Math.abs(facial)), limits.tippedFrom());
    if (!sure.isEmpty()) {
      return new Reading.NotKnown("the crown leans " + sure);
    }
    double most = limits.tippedFrom().value();
    return new Reading.Word(
        towards > most
            ? "towards the space"
            : towards < -most ? "away from the space" : Math.abs(facial) > most ? "other" : "none");
  }

  private Reading lingually(Tooth tooth) {
    double lean = -leanDeg(tooth, tooth.axes().facial());
    String sure = surely(lean, limits.inclinedFrom());
    return sure.isEmpty()
        ? Reading.yes(lean > limits.inclinedFrom().value())
        : new Reading.NotKnown("the crown leans " + sure + " to lingual");
  }

  /** Lean of the crown's axis in a direction against the occlusal normal [degrees]. */
  private double leanDeg(Tooth tooth, Vec3 direction) {
    Vec3 up = arch.frame().z();
    Vec3 axis = tooth.axes().axis();
    return Math.toDegrees(Math.atan2(axis.dot(direction.across(up).unit()), axis.dot(up)));
  }

  /** Empty where a lean is surely over or under its limit; else the lean in words. */
  private String surely(double leanDeg, Threshold limit) {
    double known = limits.axisOfTooth().value();
    return Math.abs(leanDeg - limit.value()) >= known
        ? ""
        : String.format(
            Locale.ROOT, "%.0f° ± %.0f°, too close to %.0f°", leanDeg, known, limit.value());
  }

  /**
   * A seat is cut into the tooth, and teeth that bite on each other leave it its own depth; so
   * without a word or a scan a back tooth has room for one. The ledge of a front tooth wants
   * looking at.
   */
  private Reading rest(Tooth tooth, ToothEntry entry, Surface side) {
    Reading room = opposing.over(entry, BitingPlaces.fossa(tooth, side));
    if (room instanceof Reading.Measured over) {
      Threshold wanted = limits.restClearance();
      Threshold depth = tooth.number().isAnterior() ? limits.cingulumDepth() : limits.restDepth();
      Reading seated = Reading.mm(over.value() + depth.value(), over.uncertainty());
      Verdict verdict = new Limit.Least(wanted.value(), wanted.unit()).judge(seated);
      if (verdict == Verdict.NOT_MET) {
        return Reading.yes(false);
      }
      if (verdict == Verdict.TOO_CLOSE_TO_CALL) {
        return new Reading.NotKnown(
            String.format(
                Locale.ROOT,
                "%s to the opposing tooth over a seat, too close to %.2f mm",
                seated.words(),
                wanted.value()));
      }
    }
    return tooth.number().isAnterior()
        ? unknown("whether the lingual enamel is thick enough for a ledge")
        : Reading.yes(true);
  }

  /** Over both marginal ridges of an embrasure as they are; over one where no tooth follows. */
  private Reading embrasure(Tooth tooth, ToothEntry entry, Surface side) {
    List<Vec3> ridges = new ArrayList<>(BitingPlaces.ridge(tooth, side));
    tooth
        .neighbour(side)
        .flatMap(n -> dentition.tooth(n.number()))
        .ifPresent(
            next ->
                ridges.addAll(
                    BitingPlaces.ridge(
                        next,
                        next.number().side() == tooth.number().side() ? side.opposite() : side)));
    return opposing.over(entry, ridges) instanceof Reading.Measured room
        ? Reading.mm(Math.max(0, room.value()), room.uncertainty())
        : opposing.over(entry, ridges);
  }
}
