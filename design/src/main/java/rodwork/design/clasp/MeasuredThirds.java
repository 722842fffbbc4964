package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.survey.RodReading;
import rodwork.survey.Survey;
import rodwork.survey.tooth.CrownZone;
import rodwork.survey.tooth.ToothMark;
import rodwork.survey.tooth.ToothSurvey;
import rodwork.survey.tooth.ZoneDepth;

/**
 * The facial and lingual thirds of a crown as a survey finds them.
 *
 * @param thirds readings by third
 * @param lineShare height of the survey line between margin, 0, and cusp tip or edge, 1; no entry
 *     where there is no undercut, and so no line
 */
record MeasuredThirds(
    Map<AbutmentFacts.Site, AbutmentFacts.Third> thirds,
    Map<AbutmentFacts.Site, Double> lineShare) {

  static MeasuredThirds of(Survey survey, Tooth tooth, double clearOfMarginMm, double marginMm) {
    ToothSurvey zones = ToothSurvey.of(survey, tooth);
    ToothSurvey clear = ToothSurvey.of(survey, tooth, clearOfMarginMm);
    Map<AbutmentFacts.Site, AbutmentFacts.Third> thirds = new HashMap<>();
    Map<AbutmentFacts.Site, Double> lines = new HashMap<>();
    double accuracy = survey.surveyor().rules().scanAccuracy().value();
    for (CrownZone zone : CrownZone.THIRDS) {
      AbutmentFacts.Site site = new AbutmentFacts.Site(zone.surface(), zone.across());
      double height =
          zone.surface() == Surface.FACIAL
              ? tooth.size().facialHeightMm()
              : tooth.size().lingualHeightMm();
      Optional<ZoneDepth.Deepest> deepest = zones.zone(zone).deepest();
      List<AbutmentFacts.Mark> marks = new ArrayList<>();
      double line = Double.NaN;
      for (double gauge : survey.gauges().sizesMm()) {
        ToothMark mark = ToothMark.of(survey, tooth, zone, gauge);
        if (mark.place().isPresent()) {
          RodReading reading = mark.place().get().reading();
          if (Double.isNaN(line)) {
            line = mark.overMarginMm() + reading.belowSurveyLineMm();
          }
          marks.add(mark(tooth, mark, mark.place().get().point(), reading, height, marginMm));
        }
      }
      if (Double.isNaN(line) && deepest.isPresent()) {
        line = deepest.get().overMarginMm() + deepest.get().reading().belowSurveyLineMm();
      }
      // Without undercut the line lies at or below the margin: all of the crown is above it.
      boolean none = deepest.isEmpty();
      if (!none && !Double.isNaN(line)) {
        lines.put(site, line / height);
      }
      thirds.put(
          site,
          new AbutmentFacts.Third(
              deepest
                  .map(d -> Reading.mm(d.depthMm(), d.reading().uncertaintyMm()))
                  .orElse(Reading.mm(0, accuracy)),
              clear(tooth, clear.zone(zone), accuracy),
              none ? Reading.mm(height, marginMm) : height(height - line, marginMm),
              none
                  ? Reading.mm(0, marginMm)
                  : height(Math.max(0, line - clearOfMarginMm), marginMm),
              marks));
    }
    return new MeasuredThirds(Map.copyOf(thirds), Map.copyOf(lines));
  }

  private static AbutmentFacts.Clear clear(Tooth tooth, ZoneDepth zone, double accuracy) {
    return zone.deepest()
        .map(
            d ->
                new AbutmentFacts.Clear(
                    Reading.mm(d.depthMm(), d.reading().uncertaintyMm()),
                    Optional.of(
                        Place.of(
                            tooth.number(),
                            zone.zone().label(),
                            new Place.Spot(d.point().x(), d.point().y(), d.point().z())))))
        .orElse(new AbutmentFacts.Clear(Reading.mm(0, accuracy), Optional.empty()));
  }

  private static Reading height(double mm, double marginMm) {
    return Double.isNaN(mm)
        ? new Reading.NotKnown("the survey line was not found in this third")
        : Reading.mm(mm, marginMm);
  }

  private static AbutmentFacts.Mark mark(
      Tooth tooth, ToothMark mark, Vec3 point, RodReading reading, double height, double marginMm) {
    double sure = reading.uncertaintyMm();
    return new AbutmentFacts.Mark(
        mark.gaugeMm(),
        Reading.mm(reading.overhang().depthMm(), sure),
        Double.isNaN(reading.depthAtReferenceMm())
            ? new Reading.NotKnown("the reference orientation is not known")
            : Reading.mm(reading.depthAtReferenceMm(), sure),
        Double.isNaN(mark.fromMarginMm())
            ? new Reading.NotKnown("the margin was not captured here")
            : Reading.mm(mark.fromMarginMm(), marginMm),
        new Reading.Measured(tooth.heightShare(point), marginMm / height, "1"),
        Reading.mm(reading.belowSurveyLineMm(), sure),
        Double.isNaN(reading.convergenceDeg())
            ? new Reading.NotKnown("the surface ends here")
            : Reading.degrees(reading.convergenceDeg(), 0),
        Place.of(
            tooth.number(), mark.zone().label(), new Place.Spot(point.x(), point.y(), point.z())));
  }

  /**
   * The class of the facial survey line by where it runs: in the occlusal, middle or gingival
   * third, or from one into the other.
   *
   * @param space the side of the space
   */
  Reading lineClass(Surface space) {
    double mesial = share(AcrossThird.MESIAL);
    double middle = share(AcrossThird.MIDDLE);
    double distal = share(AcrossThird.DISTAL);
    if (Double.isNaN(mesial) && Double.isNaN(middle) && Double.isNaN(distal)) {
      return new Reading.Word("none");
    }
    // A third without undercut has its line at the margin.
    double m = Double.isNaN(mesial) ? 0 : mesial;
    double d = Double.isNaN(distal) ? 0 : distal;
    if (Math.max(m, d) > 2 / 3.0 && Math.min(m, d) < 1 / 3.0) {
      boolean highNear = (m > d) == (space == Surface.MESIAL);
      return new Reading.Word(highNear ? "diagonal near" : "diagonal far");
    }
    if (Math.min(m, d) - (Double.isNaN(middle) ? 0 : middle) > 1 / 3.0) {
      return new Reading.Word("low between");
    }
    double mean = (m + d + (Double.isNaN(middle) ? 0 : middle)) / 3;
    return new Reading.Word(mean > 2 / 3.0 ? "high" : mean < 1 / 3.0 ? "low" : "medium");
  }

  private double share(AcrossThird across) {
    return lineShare.getOrDefault(new AbutmentFacts.Site(Surface.FACIAL, across), Double.NaN);
  }
}
