package rodwork.casework.rulebook;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Fact;
import rodwork.rules.Place;
import rodwork.rules.Reading;

/** Invented abutments at which everything is convenient; tests change one property at a time. */
final class Abutments {
  static final double UNCERTAIN_MM = 0.04;

  static final AbutmentFacts.Levels LEVELS = new AbutmentFacts.Levels(3, 6);

  private Abutments() {}

  /** A lower first premolar in front of a bounded space. */
  static AbutmentFacts premolar() {
    return tooth(44, "premolar", "lower");
  }

  /** The same next to a free end. */
  static AbutmentFacts freeEnd() {
    return premolar().with(Fact.FREE_END, Reading.yes(true));
  }

  /** A tipped lower molar behind a bounded space. */
  static AbutmentFacts tippedMolar(String jaw) {
    return tooth(jaw.equals("lower") ? 37 : 27, "molar", jaw)
        .with(Fact.TIPPING, new Reading.Word("towards the space"));
  }

  static AbutmentFacts tooth(int fdi, String kind, String jaw) {
    Map<Fact, Reading> general = new EnumMap<>(Fact.class);
    general.put(Fact.TOOTH_KIND, new Reading.Word(kind));
    general.put(Fact.JAW, new Reading.Word(jaw));
    general.put(Fact.SURVEY_LINE, new Reading.Word("medium"));
    general.put(Fact.TIPPING, new Reading.Word("none"));
    for (Fact yes : List.of(Fact.ADJACENT_SPACE, Fact.FAR_REST, Fact.NEAR_REST)) {
      general.put(yes, Reading.yes(true));
    }
    for (Fact fact : Fact.values()) {
      if (fact.kind() == Fact.Kind.YES_NO) {
        general.putIfAbsent(fact, Reading.yes(false));
      }
    }
    put(general, Fact.CROWN_HEIGHT, 7);
    general.put(Fact.CROWN_SHARE, new Reading.Measured(0.9, 0.04, "1"));
    put(general, Fact.OCCLUSAL_ROOM, 2);
    put(general, Fact.VESTIBULE_DEPTH, 8);
    put(general, Fact.TOTAL_STAND_OFF_3, 0.5);
    put(general, Fact.TOTAL_STAND_OFF_6, 0.8);
    put(general, Fact.TISSUE_UNDERCUT_3, 0.1);
    put(general, Fact.TISSUE_UNDERCUT_6, 0.3);
    put(general, Fact.TISSUE_UNDERCUT_START, 4);
    put(general, Fact.PLANE_HEIGHT, 2.5);
    put(general, Fact.PLANE_ENAMEL, 0.2);
    put(general, Fact.RECIPROCAL_UNDERCUT, 0);
    put(general, Fact.FACIAL_ARM_UNDERCUT, 0);
    put(general, Fact.RECIPROCAL_HEIGHT, 3);
    put(general, Fact.RECIPROCAL_ENAMEL, 0.2);
    put(general, Fact.LOWERING_ENAMEL_ORIGIN, 0.3);
    put(general, Fact.LOWERING_ENAMEL_MIDDLE, 0.3);
    put(general, Fact.CIRCLET_LENGTH, 16);
    put(general, Fact.ARM_UNDERCUT, 0.02);
    put(general, Fact.BAR_LENGTH, 14);
    general.put(Fact.BAR_CROSSING, Reading.degrees(88, 3));
    general.put(Fact.ENCIRCLEMENT, Reading.degrees(220, 3));
    general.put(Fact.ARM_PULL, new Reading.Measured(5, 1, "N"));
    general.put(Fact.ARM_STRESS, new Reading.Measured(0.6, 0.2, "1"));
    general.put(Fact.ARM_STRESS_OTHERWISE, new Reading.Measured(0.4, 0.1, "1"));
    Map<AbutmentFacts.Site, AbutmentFacts.Third> thirds = new HashMap<>();
    for (Surface surface : List.of(Surface.FACIAL, Surface.LINGUAL)) {
      for (AcrossThird across : AcrossThird.values()) {
        thirds.put(new AbutmentFacts.Site(surface, across), third(0.6, 2.2, 2.5, 0.25, 0.5));
      }
    }
    return new AbutmentFacts(
        ToothNumber.of(fdi), Surface.DISTAL, LEVELS, general, Map.of(), thirds);
  }

  /** A third with marks of these gauges. */
  static AbutmentFacts.Third third(double deepest, double above, double below, double... gauges) {
    return new AbutmentFacts.Third(
        mm(deepest),
        new AbutmentFacts.Clear(mm(deepest), Optional.empty()),
        mm(above),
        mm(below),
        java.util.Arrays.stream(gauges).mapToObj(g -> mark(g, g, 1.8, 1.5)).toList());
  }

  static AbutmentFacts.Mark mark(
      double gauge, double atReference, double fromMargin, double belowLine) {
    return new AbutmentFacts.Mark(
        gauge,
        mm(gauge),
        mm(atReference),
        mm(fromMargin),
        new Reading.Measured(fromMargin / 7, 0.04, "1"),
        mm(belowLine),
        Reading.degrees(15, 1),
        Place.of("gauge mark " + gauge));
  }

  /** Facial third of the abutment with one kind of readings changed. */
  static AbutmentFacts facial(AbutmentFacts facts, AcrossThird across, AbutmentFacts.Third third) {
    return facts.with(new AbutmentFacts.Site(Surface.FACIAL, across), third);
  }

  static Reading mm(double value) {
    return Reading.mm(value, UNCERTAIN_MM);
  }

  private static void put(Map<Fact, Reading> facts, Fact fact, double value) {
    facts.put(fact, mm(value));
  }
}
