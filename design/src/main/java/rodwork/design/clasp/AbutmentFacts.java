package rodwork.design.clasp;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Place;
import rodwork.rules.Reading;

/**
 * What is known of one tooth as an abutment for one space. What is not in it is not known.
 *
 * @param tooth which
 * @param space the proximal surface on the side of the space, or of the embrasure where there is
 *     none
 * @param general facts of the tooth as a whole
 * @param places where general facts were measured, for those that have a place
 * @param thirds readings of the facial and lingual thirds
 */
public record AbutmentFacts(
    ToothNumber tooth,
    Surface space,
    Map<Fact, Reading> general,
    Map<Fact, Place> places,
    Map<Site, Third> thirds) {
  /** A third of the facial or lingual surface. */
  public record Site(Surface surface, AcrossThird across) {}

  /**
   * What was measured in one third.
   *
   * @param deepest the deepest undercut between survey line and margin [mm]
   * @param roomAbove from the survey line up to the occlusal edge of the surface [mm]
   * @param roomBelow from the survey line down to where an arm may still lie above the margin [mm]
   * @param marks gauge marks that exist
   */
  public record Third(Reading deepest, Reading roomAbove, Reading roomBelow, List<Mark> marks) {
    public Third {
      marks = List.copyOf(marks);
    }
  }

  /**
   * A gauge mark, the best place of a third for a tip.
   *
   * @param gaugeMm size of the gauge
   * @param depth undercut read there [mm]
   * @param atReference undercut along the occlusal normal [mm]
   * @param fromMargin along the surface [mm]
   * @param belowLine below the survey line along the path [mm]
   * @param convergence angle of gingival convergence [degrees]
   * @param place where
   */
  public record Mark(
      double gaugeMm,
      Reading depth,
      Reading atReference,
      Reading fromMargin,
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
      throw new IllegalArgumentException(fact.words() + " cannot be \"" + reading.words() + "\"");
    }
  }

  /** The reading of a general fact. */
  public Reading reading(Fact fact) {
    Reading known = general.get(fact);
    return known != null ? known : new Reading.NotKnown("not measured or asked yet");
  }

  /** Where a general fact was measured. */
  public Place place(Fact fact) {
    Place known = places.get(fact);
    return known != null ? known : Place.of("tooth " + tooth.fdi());
  }

  /** The same facts with one changed. */
  public AbutmentFacts with(Fact fact, Reading reading) {
    Map<Fact, Reading> changed = new EnumMap<>(Fact.class);
    changed.putAll(general);
    changed.put(fact, reading);
    return new AbutmentFacts(tooth, space, changed, places, thirds);
  }

  /** The same facts without one. */
  public AbutmentFacts without(Fact fact) {
    Map<Fact, Reading> changed = new HashMap<>(general);
    changed.remove(fact);
    return new AbutmentFacts(tooth, space, changed, places, thirds);
  }

  /** The same facts with other readings of a third. */
  public AbutmentFacts with(Site site, Third third) {
    Map<Site, Third> changed = new HashMap<>(thirds);
    changed.put(site, third);
    return new AbutmentFacts(tooth, space, general, places, changed);
  }

  /** The third on the side of the space or away from it. */
  AcrossThird across(Spot spot) {
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
