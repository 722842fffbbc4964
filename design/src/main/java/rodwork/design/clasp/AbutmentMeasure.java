package rodwork.design.clasp;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.teeth.UsualCrown;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.survey.Survey;
import rodwork.survey.standoff.StandOff;

/**
 * What a scan tells of an abutment at one path. What only the mouth can tell (mobility, root,
 * tissue, frenum, appearance) and what depends on the plan (lengths of arms, rests) is left not
 * known.
 */
public final class AbutmentMeasure {
  /** The reciprocal arm lies about half way up the crown, within this share of its height. */
  private static final double ARM_SHARE = 0.1;

  private AbutmentMeasure() {}

  /**
   * Measures.
   *
   * @param space side of the space
   * @param levels where below the margin the gum was read
   * @param sections of the gum below the facial margin
   * @param clearOfMarginMm how far an arm stays from the margin [mm]
   * @param marginMm how exactly the margin is known [mm]
   */
  public static AbutmentFacts of(
      Survey survey,
      Tooth tooth,
      Surface space,
      AbutmentFacts.Levels levels,
      List<BarSection> sections,
      double clearOfMarginMm,
      double marginMm) {
    MeasuredThirds thirds = MeasuredThirds.of(survey, tooth, clearOfMarginMm, marginMm);
    Map<Fact, Reading> facts = new EnumMap<>(Fact.class);
    Map<Fact, Place> places = new EnumMap<>(Fact.class);
    ToothNumber number = tooth.number();
    facts.put(Fact.TOOTH_KIND, new Reading.Word(kind(number)));
    facts.put(
        Fact.JAW, new Reading.Word(number.jaw() == rodwork.anatomy.Jaw.UPPER ? "upper" : "lower"));
    facts.put(Fact.SURVEY_LINE, thirds.lineClass(space));
    facts.put(Fact.CROWN_HEIGHT, Reading.mm(tooth.size().facialHeightMm(), marginMm));
    double usual = UsualCrown.of(number.fdi()).height();
    facts.put(
        Fact.CROWN_SHARE,
        new Reading.Measured(tooth.size().facialHeightMm() / usual, marginMm / usual, "1"));
    facts.put(Fact.RECIPROCAL_UNDERCUT, bracing(survey, tooth, Surface.LINGUAL));
    facts.put(Fact.FACIAL_ARM_UNDERCUT, bracing(survey, tooth, Surface.FACIAL));
    Map<AcrossThird, AbutmentFacts.Crossing> crossings = new EnumMap<>(AcrossThird.class);
    for (AcrossThird across : AcrossThird.values()) {
      List<BarSection> below = sections.stream().filter(s -> s.across() == across).toList();
      if (!below.isEmpty()) {
        crossings.put(across, crossing(number, below));
      }
    }
    AbutmentFacts.Crossing middle = crossings.get(AcrossThird.MIDDLE);
    if (middle != null) {
      facts.putAll(middle.readings());
      places.putAll(middle.places());
    }
    return new AbutmentFacts(
        number, space, levels, facts, places, thirds.thirds(), crossings, Map.of());
  }

  private static String kind(ToothNumber number) {
    if (number.isIncisor()) {
      return "incisor";
    }
    return number.isMolar() ? "molar" : number.isPremolar() ? "premolar" : "canine";
  }

  /**
   * The deepest undercut half way up a side: where an arm lies that braces. Told by the place
   * alone, for the hollow of an incisor faces up and is no lingual surface by its slope.
   */
  private static Reading bracing(Survey survey, Tooth tooth, Surface side) {
    TriangleMesh mesh = survey.surveyor().topology().mesh();
    double deepest = -1;
    for (int t : tooth.copyOfTriangles()) {
      Vec3 p = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      if (Math.abs(tooth.heightShare(p) - 0.5) < ARM_SHARE && tooth.place(p).surface() == side) {
        deepest = Math.max(deepest, survey.overhangAt(p).depthMm());
      }
    }
    return deepest < 0
        ? new Reading.NotKnown(
            "no part of the "
                + side.name().toLowerCase(Locale.ROOT)
                + " side was found half way up")
        : Reading.mm(deepest, survey.surveyor().rules().scanAccuracy().value());
  }

  private static void worse(
      Map<Fact, Reading> facts,
      Map<Fact, Place> places,
      Fact fact,
      Reading reading,
      Optional<Place> place) {
    Reading before = facts.get(fact);
    if (before == null || badness(reading) > badness(before)) {
      facts.put(fact, reading);
      place.ifPresent(p -> places.put(fact, p));
    }
  }

  /** The worst of a bar's middle and its edges; no room beats not known, which beats any number. */
  static AbutmentFacts.Crossing crossing(ToothNumber tooth, List<BarSection> sections) {
    Map<Fact, Reading> facts = new EnumMap<>(Fact.class);
    Map<Fact, Place> places = new EnumMap<>(Fact.class);
    for (BarSection section : sections) {
      StandOff off = section.standOff();
      Optional<Place> near = section.place(tooth, off.near());
      Optional<Place> far = section.place(tooth, off.far());
      worse(facts, places, Fact.TOTAL_STAND_OFF_3, off.near().total(), near);
      worse(facts, places, Fact.TOTAL_STAND_OFF_6, off.far().total(), far);
      worse(facts, places, Fact.TISSUE_UNDERCUT_3, off.near().mostTissue(), near);
      worse(facts, places, Fact.TISSUE_UNDERCUT_6, off.far().mostTissue(), far);
      lesser(facts, Fact.VESTIBULE_DEPTH, off.vestibuleDepth());
      lesser(facts, Fact.TISSUE_UNDERCUT_START, off.tissueStart());
    }
    return new AbutmentFacts.Crossing(facts, places);
  }

  private static double badness(Reading reading) {
    return switch (reading) {
      case Reading.Measured m -> m.value();
      case Reading.AtLeast a -> a.value();
      case Reading.NoRoom _ -> 2e9;
      default -> 1e9;
    };
  }

  private static void lesser(Map<Fact, Reading> facts, Fact fact, Reading reading) {
    Reading before = facts.get(fact);
    if (before == null || smallness(reading) < smallness(before)) {
      facts.put(fact, reading);
    }
  }

  /** Of what wants to be large: no room is less than not known, which is less than any number. */
  private static double smallness(Reading reading) {
    return switch (reading) {
      case Reading.Measured m -> m.value();
      case Reading.AtLeast a -> a.value();
      case Reading.NoRoom _ -> -2;
      default -> -1;
    };
  }
}
