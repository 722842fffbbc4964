package rodwork.design.clasp;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/**
 * What is known of one tooth as an abutment for one space. What is not in it is not known.
 *
 * @param tooth which
 * @param space the proximal surface on the side of the space, or of the embrasure where there is
 *     none
 * @param levels where below the margin the gum was read
 * @param general facts of the tooth as a whole
 * @param places where general facts were measured, for those that have a place
 * @param thirds readings of the facial and lingual thirds
 * @param crossings readings of the gum below each facial third, where a bar to that third would
 *     cross the margin; a third without them has the general ones
 * @param laid what was read off the arms of a family with its tip in a third, and what its
 *     preparation would take; what is not there is the general reading
 */
public record AbutmentFacts(
    ToothNumber tooth,
    Surface space,
    Levels levels,
    Map<Fact, Reading> general,
    Map<Fact, Place> places,
    Map<Site, Third> thirds,
    Map<AcrossThird, Crossing> crossings,
    Map<Reach, Map<Fact, Reading>> laid) {
  /** Sizes of gauges that differ by less are one, read twice [mm]. */
  private static final double SAME_GAUGE_MM = 1e-6;

  /**
   * Where below the margin a bar's stand-off is read, as the rulebook has it.
   *
   * @param nearMm upper place [mm]
   * @param farMm lower place [mm]
   */
  public record Levels(double nearMm, double farMm) {}

  /** The retentive arm of a family with its tip in one third. */
  public record Reach(String family, AcrossThird tip) {}

  /**
   * The gum below one facial third.
   *
   * @param readings stand-off, tissue undercut, vestibule
   * @param places where they were read
   */
  public record Crossing(Map<Fact, Reading> readings, Map<Fact, Place> places) {
    public Crossing {
      readings.forEach(AbutmentFacts::check);
      readings = Map.copyOf(readings);
      places = Map.copyOf(places);
    }

    private Crossing without(Fact fact) {
      Map<Fact, Reading> left = new HashMap<>(readings);
      left.remove(fact);
      return new Crossing(left, places);
    }
  }

  /** A third of the facial or lingual surface. */
  public record Site(Surface surface, AcrossThird across) {}

  /**
   * What was measured in one third.
   *
   * @param deepest the deepest undercut between survey line and margin [mm]
   * @param clear the deepest undercut that is clear of the margin: what a deepened one starts from
   * @param roomAbove from the survey line up to the occlusal edge of the surface [mm]
   * @param roomBelow from the survey line down to where an arm may still lie above the margin [mm]
   * @param marks gauge marks that exist
   */
  public record Third(
      Reading deepest, Clear clear, Reading roomAbove, Reading roomBelow, List<Mark> marks) {
    public Third {
      marks = List.copyOf(marks);
    }

    /**
     * The mark of a gauge; empty where it has none here. A survey is made with the very gauges that
     * the families of its rulebook take, so no other mark stands for one.
     */
    public Optional<Mark> mark(Threshold gauge) {
      return marks.stream()
          .filter(m -> Math.abs(m.gaugeMm() - gauge.value()) < SAME_GAUGE_MM)
          .findFirst();
    }
  }

  /**
   * The deepest undercut of a third where a tip may lie.
   *
   * @param depth there [mm]; 0 where there is none
   * @param place empty where there is none
   */
  public record Clear(Reading depth, Optional<Place> place) {}

  /**
   * A gauge mark, the best place of a third for a tip.
   *
   * @param gaugeMm size of the gauge
   * @param depth undercut read there [mm]
   * @param atReference undercut along the occlusal normal [mm]
   * @param fromMargin along the surface [mm]
   * @param upTheCrown height over the margin as a share of the crown's there
   * @param belowLine below the survey line along the path [mm]
   * @param convergence angle of gingival convergence [degrees]
   * @param place where
   */
  public record Mark(
      double gaugeMm,
      Reading depth,
      Reading atReference,
      Reading fromMargin,
      Reading upTheCrown,
      Reading belowLine,
      Reading convergence,
      Place place) {}

  public AbutmentFacts {
    if (!space.isProximal()) {
      throw new IllegalArgumentException("a space lies mesially or distally, not " + space);
    }
    general.forEach(AbutmentFacts::check);
    general = Map.copyOf(general);
    places = Map.copyOf(places);
    thirds = Map.copyOf(thirds);
    crossings = Map.copyOf(crossings);
    Map<Reach, Map<Fact, Reading>> arms = new HashMap<>();
    laid.forEach(
        (reach, readings) -> {
          readings.forEach(AbutmentFacts::check);
          arms.put(reach, Map.copyOf(readings));
        });
    laid = Map.copyOf(arms);
  }

  /** Facts without readings of single crossings. */
  public AbutmentFacts(
      ToothNumber tooth,
      Surface space,
      Levels levels,
      Map<Fact, Reading> general,
      Map<Fact, Place> places,
      Map<Site, Third> thirds) {
    this(tooth, space, levels, general, places, thirds, Map.of(), Map.of());
  }

  private static void check(Fact fact, Reading reading) {
    boolean fits =
        switch (reading) {
          case Reading.NotKnown _ -> true;
          case Reading.NoRoom _ -> fact.kind() == Fact.Kind.LENGTH;
          case Reading.Measured m -> m.unit().equals(fact.unit());
          case Reading.AtLeast a -> a.unit().equals(fact.unit());
          case Reading.Word w ->
              fact.kind() == Fact.Kind.CHOICE && fact.choices().contains(w.word());
          case Reading.Said _ -> fact.kind() == Fact.Kind.YES_NO;
        };
    if (!fits) {
      throw new IllegalArgumentException(fact.key() + " cannot be \"" + reading.words() + "\"");
    }
  }

  /** The reading of a general fact. */
  public Reading reading(Fact fact) {
    if (fact == Fact.FREE_END_EITHER) {
      Reading here = reading(Fact.FREE_END);
      Reading beyond = reading(Fact.FREE_END_BEYOND);
      return here.equals(Reading.yes(true)) || beyond.equals(Reading.yes(true))
          ? Reading.yes(true)
          : here instanceof Reading.NotKnown ? here : beyond;
    }
    Reading known = general.get(fact);
    return known != null ? known : new Reading.NotKnown("not measured or asked yet");
  }

  /** What a fact is, for a person. */
  public String words(Fact fact) {
    return fact.words(levels);
  }

  /** Where a general fact was measured. */
  public Place place(Fact fact) {
    Place known = places.get(fact);
    return known != null ? known : Place.of(tooth, "");
  }

  /** The reading of a fact below a third. */
  Reading reading(Fact fact, AcrossThird below) {
    Crossing crossing = crossings.get(below);
    Reading there = crossing == null ? null : crossing.readings.get(fact);
    return there != null ? there : reading(fact);
  }

  /** Where a fact was read below a third. */
  Place place(Fact fact, AcrossThird below) {
    Crossing crossing = crossings.get(below);
    if (crossing == null || !crossing.readings.containsKey(fact)) {
      return place(fact);
    }
    Place there = crossing.places.get(fact);
    return there != null ? there : place(fact);
  }

  /** The same facts with one changed, everywhere. */
  public AbutmentFacts with(Fact fact, Reading reading) {
    Map<Fact, Reading> changed = new EnumMap<>(Fact.class);
    changed.putAll(general);
    changed.put(fact, reading);
    return new AbutmentFacts(
        tooth, space, levels, changed, places, thirds, crossingsWithout(fact), laidWithout(fact));
  }

  /** The same facts without one. */
  public AbutmentFacts without(Fact fact) {
    Map<Fact, Reading> changed = new HashMap<>(general);
    changed.remove(fact);
    return new AbutmentFacts(
        tooth, space, levels, changed, places, thirds, crossingsWithout(fact), laidWithout(fact));
  }

  /** What a person says of an arm goes before what was laid out. */
  private Map<Reach, Map<Fact, Reading>> laidWithout(Fact fact) {
    Map<Reach, Map<Fact, Reading>> left = new HashMap<>();
    laid.forEach(
        (reach, readings) -> {
          Map<Fact, Reading> others = new HashMap<>(readings);
          others.remove(fact);
          left.put(reach, others);
        });
    return left;
  }

  /** The same facts with what was read off arms, and what their preparation takes. */
  public AbutmentFacts withLaid(Map<Reach, Map<Fact, Reading>> readings) {
    return new AbutmentFacts(tooth, space, levels, general, places, thirds, crossings, readings);
  }

  private Map<AcrossThird, Crossing> crossingsWithout(Fact fact) {
    Map<AcrossThird, Crossing> left = new EnumMap<>(AcrossThird.class);
    crossings.forEach((across, crossing) -> left.put(across, crossing.without(fact)));
    return left;
  }

  /** The same facts with a place for one. */
  public AbutmentFacts at(Fact fact, Place place) {
    Map<Fact, Place> changed = new HashMap<>(places);
    changed.put(fact, place);
    return new AbutmentFacts(tooth, space, levels, general, changed, thirds, crossings, laid);
  }

  /** The same facts with other readings of a third. */
  public AbutmentFacts with(Site site, Third third) {
    Map<Site, Third> changed = new HashMap<>(thirds);
    changed.put(site, third);
    return new AbutmentFacts(tooth, space, levels, general, places, changed, crossings, laid);
  }

  /** The third on the side of the space or away from it. */
  public AcrossThird across(Spot spot) {
    AcrossThird near = space == Surface.MESIAL ? AcrossThird.MESIAL : AcrossThird.DISTAL;
    AcrossThird far = space == Surface.MESIAL ? AcrossThird.DISTAL : AcrossThird.MESIAL;
    return switch (spot) {
      case NEAR -> near;
      case FAR -> far;
      case MIDDLE -> AcrossThird.MIDDLE;
      case MESIAL -> AcrossThird.MESIAL;
      case DISTAL -> AcrossThird.DISTAL;
    };
  }

  /** Where along a surface something lies, seen from the space or from the arch. */
  public enum Spot {
    NEAR,
    MIDDLE,
    FAR,
    MESIAL,
    DISTAL
  }
}
