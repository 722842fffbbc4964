package rodwork.design.clasp;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Place;
import rodwork.rules.Reading;

/** The facts of an abutment as a family sees them that puts its tip into one third. */
final class TipPlace {
  private final AbutmentFacts facts;
  private final Family family;
  final AcrossThird across;
  final AbutmentFacts.@Nullable Third third;
  final Optional<AbutmentFacts.Mark> mark;

  TipPlace(AbutmentFacts facts, Family family, AbutmentFacts.Spot spot) {
    this.facts = facts;
    this.family = family;
    this.across = facts.across(spot);
    this.third = third(spot);
    this.mark = third == null ? Optional.empty() : third.mark(family.gauge());
  }

  Reading reading(Fact fact) {
    Optional<Reading> put = fact.ofTip() ? put(fact) : Optional.empty();
    if (put.isPresent()) {
      return put.get();
    }
    return switch (fact) {
      case TIP_UNDERCUT -> ofMark(mark.map(AbutmentFacts.Mark::depth));
      case TIP_AT_REFERENCE -> ofMark(mark.map(AbutmentFacts.Mark::atReference));
      case TIP_FROM_MARGIN -> ofMark(mark.map(AbutmentFacts.Mark::fromMargin));
      case TIP_HEIGHT -> ofMark(mark.map(AbutmentFacts.Mark::upTheCrown));
      case TIP_TRAVEL -> ofMark(mark.map(AbutmentFacts.Mark::belowLine));
      case TIP_CONVERGENCE -> ofMark(mark.map(AbutmentFacts.Mark::convergence));
      case ROOM_ABOVE_ORIGIN -> above(third(family.origin()));
      case ROOM_ABOVE_MIDDLE -> above(third(AbutmentFacts.Spot.MIDDLE));
      case ROOM_BELOW_MIDDLE -> below(third(AbutmentFacts.Spot.MIDDLE));
      case ROOM_BELOW_TIP -> below(third);
      case LOWERING_ENAMEL_ORIGIN,
          LOWERING_ENAMEL_MIDDLE,
          RECIPROCAL_ENAMEL,
          CIRCLET_LENGTH,
          ARM_UNDERCUT,
          BAR_LENGTH,
          BAR_CROSSING,
          ENCIRCLEMENT,
          ARM_PULL,
          ARM_STRESS,
          ARM_STRESS_OTHERWISE ->
          laid(fact);
      default ->
          family.surface() == Surface.FACIAL ? facts.reading(fact, across) : facts.reading(fact);
    };
  }

  String words(Fact fact) {
    return facts.words(fact);
  }

  private Reading laid(Fact fact) {
    Map<Fact, Reading> arms = facts.laid().get(reach());
    Reading laid = arms == null ? null : arms.get(fact);
    return laid != null ? laid : facts.reading(fact);
  }

  /** What was read where a person put the tip. */
  Optional<Reading> put(Fact fact) {
    return Optional.ofNullable(facts.laid().get(reach())).map(arms -> arms.get(fact));
  }

  /** Whether the tip stands on a mark, or where a person put it. */
  boolean stands() {
    return mark.isPresent() || put(Fact.TIP_UNDERCUT).isPresent();
  }

  AbutmentFacts.Reach reach() {
    return new AbutmentFacts.Reach(family.id(), across);
  }

  Place place(Fact fact) {
    return switch (fact) {
      case ROOM_ABOVE_ORIGIN, LOWERING_ENAMEL_ORIGIN -> words(facts.across(family.origin()));
      case ROOM_ABOVE_MIDDLE, ROOM_BELOW_MIDDLE, LOWERING_ENAMEL_MIDDLE ->
          words(AcrossThird.MIDDLE);
      case ROOM_BELOW_TIP -> words(across);
      default ->
          fact.ofTip() || fact.ofArm()
              ? mark.map(AbutmentFacts.Mark::place).orElseGet(() -> wouldBe(across))
              : family.surface() == Surface.FACIAL ? facts.place(fact, across) : facts.place(fact);
    };
  }

  /** Where the tip would lie once its undercut is made. */
  private Place wouldBe(AcrossThird where) {
    Place words = words(where);
    return third == null
        ? words
        : third.clear().place().map(p -> new Place(words.wording(), p.spot())).orElse(words);
  }

  private Place words(AcrossThird where) {
    return Place.of(facts.tooth(), where.on(family.surface()) + " third");
  }

  private AbutmentFacts.@Nullable Third third(AbutmentFacts.Spot spot) {
    return facts.thirds().get(new AbutmentFacts.Site(family.surface(), facts.across(spot)));
  }

  private static Reading above(AbutmentFacts.@Nullable Third third) {
    return third == null ? notMeasured() : third.roomAbove();
  }

  private static Reading below(AbutmentFacts.@Nullable Third third) {
    return third == null ? notMeasured() : third.roomBelow();
  }

  private static Reading ofMark(Optional<Reading> reading) {
    return reading.orElseGet(() -> new Reading.NotKnown("no gauge mark here"));
  }

  static Reading notMeasured() {
    return new Reading.NotKnown("this third was not measured");
  }
}
