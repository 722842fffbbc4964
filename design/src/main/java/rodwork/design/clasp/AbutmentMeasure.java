package rodwork.design.clasp;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.survey.Survey;
import rodwork.survey.standoff.StandOff;
import rodwork.survey.standoff.StandOffRules;

/**
 * What a scan tells of an abutment at one path. What only the mouth can tell (mobility, root,
 * tissue, frenum, appearance) and what depends on the plan (lengths of arms, rests) is left not
 * known.
 */
public final class AbutmentMeasure {
  /** A bar is about this wide [mm]: stand-off counts to both sides of its middle. */
  private static final double HALF_BAR_MM = 1;

  /** A margin point this far from where it was looked for does not stand for it [mm]. */
  private static final double MARGIN_NEAR_MM = 0.7;

  /** The reciprocal arm lies about half way up the crown, within this share of its height. */
  private static final double ARM_SHARE = 0.1;

  private AbutmentMeasure() {}

  /**
   * Measures.
   *
   * @param tree over the whole cast
   * @param space side of the space
   * @param clearOfMarginMm how far an arm stays from the margin [mm]
   */
  public static AbutmentFacts of(
      Survey survey,
      TriangleTree tree,
      Tooth tooth,
      Surface space,
      StandOffRules rules,
      double clearOfMarginMm) {
    MeasuredThirds thirds = MeasuredThirds.of(survey, tooth, clearOfMarginMm);
    Map<Fact, Reading> facts = new EnumMap<>(Fact.class);
    Map<Fact, Place> places = new EnumMap<>(Fact.class);
    ToothNumber number = tooth.number();
    facts.put(Fact.TOOTH_KIND, new Reading.Word(kind(number)));
    facts.put(
        Fact.JAW, new Reading.Word(number.jaw() == rodwork.anatomy.Jaw.UPPER ? "upper" : "lower"));
    facts.put(Fact.SURVEY_LINE, thirds.lineClass(space));
    facts.put(Fact.CROWN_HEIGHT, Reading.mm(tooth.size().facialHeightMm(), 0.5));
    facts.put(Fact.RECIPROCAL_UNDERCUT, reciprocal(survey, tooth));
    standOff(survey, tree, tooth, rules, facts, places);
    return new AbutmentFacts(number, space, facts, places, thirds.thirds());
  }

  private static String kind(ToothNumber number) {
    if (number.isIncisor()) {
      return "incisor";
    }
    return number.isMolar() ? "molar" : number.isPremolar() ? "premolar" : "canine";
  }

  /** The deepest undercut half way up the lingual surface: where a reciprocal arm lies. */
  private static Reading reciprocal(Survey survey, Tooth tooth) {
    TriangleMesh mesh = survey.surveyor().topology().mesh();
    double deepest = -1;
    for (int t : tooth.trianglesOf(Surface.LINGUAL)) {
      Vec3 p = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      if (Math.abs(tooth.heightShare(p) - 0.5) < ARM_SHARE) {
        deepest = Math.max(deepest, survey.overhangAt(p).depthMm());
      }
    }
    return deepest < 0
        ? new Reading.NotKnown("the lingual surface was not captured")
        : Reading.mm(deepest, survey.surveyor().rules().scanAccuracy().value());
  }

  /** The worst of three sections: the middle of a bar and both its edges. */
  private static void standOff(
      Survey survey,
      TriangleTree tree,
      Tooth tooth,
      StandOffRules rules,
      Map<Fact, Reading> facts,
      Map<Fact, Place> places) {
    for (int side = -1; side <= 1; side++) {
      Vec3 start = marginAt(tooth, side * HALF_BAR_MM);
      Optional<SurfacePoint> on =
          start == null ? Optional.empty() : tree.closest(start, MARGIN_NEAR_MM);
      if (on.isEmpty()) {
        continue;
      }
      StandOff off =
          StandOff.of(survey, on.get().point(), on.get().triangle(), tooth.axes().facial(), rules);
      worse(facts, places, Fact.TOTAL_STAND_OFF_3, off.near().total(), off.near());
      worse(facts, places, Fact.TOTAL_STAND_OFF_6, off.far().total(), off.far());
      worse(facts, places, Fact.TISSUE_UNDERCUT_3, off.near().mostTissue(), off.near());
      worse(facts, places, Fact.TISSUE_UNDERCUT_6, off.far().mostTissue(), off.far());
      lesser(facts, Fact.VESTIBULE_DEPTH, off.vestibuleDepth());
      lesser(facts, Fact.TISSUE_UNDERCUT_START, off.tissueStart());
    }
  }

  /** The facial margin a little to mesial or distal of its middle; null where it was not seen. */
  private static @Nullable Vec3 marginAt(Tooth tooth, double mesialMm) {
    Vec3 best = null;
    double least = MARGIN_NEAR_MM;
    GingivalMargin margin = tooth.margin();
    for (int i = 0; i < margin.points().size(); i++) {
      Vec3 q = tooth.axes().toTooth(margin.points().get(i));
      double off = Math.abs(q.x() - mesialMm);
      if (margin.kinds().get(i) == GingivalMargin.Kind.SEEN && q.y() > 0 && off < least) {
        least = off;
        best = margin.points().get(i);
      }
    }
    return best;
  }

  /** Keeps the greater; no room beats not known, which beats any number. */
  private static void worse(
      Map<Fact, Reading> facts,
      Map<Fact, Place> places,
      Fact fact,
      Reading reading,
      StandOff.Level level) {
    Reading before = facts.get(fact);
    if (before == null || badness(reading) > badness(before)) {
      facts.put(fact, reading);
      level
          .place()
          .ifPresent(
              p ->
                  places.put(
                      fact,
                      new Place(
                          "facial, %.0f mm below the margin".formatted(level.fromMarginMm()),
                          Optional.of(new Place.Spot(p.x(), p.y(), p.z())))));
    }
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
    if (before == null || badness(reading) < badness(before)) {
      facts.put(fact, reading);
    }
  }
}
