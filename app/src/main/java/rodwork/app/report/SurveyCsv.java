package rodwork.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.survey.RodReading;
import rodwork.survey.tooth.ToothSurvey;
import rodwork.survey.tooth.ZoneDepth;

/**
 * The survey by tooth and third as comma-separated values (RFC 4180): lengths in mm, angles in
 * degrees, positions in the scan frame; an empty field where there is nothing.
 */
public final class SurveyCsv {
  private static final String HEAD =
      "tooth_fdi,zone,undercut_mm,uncertainty_mm,gauge_that_fits_mm,from_margin_mm,"
          + "below_survey_line_mm,convergence_deg,undercut_at_reference_mm,hidden_mm,x_mm,y_mm,z_mm";

  private SurveyCsv() {}

  public static String of(List<ToothSurvey> teeth) {
    List<String> lines = new ArrayList<>();
    lines.add(HEAD);
    for (ToothSurvey tooth : teeth) {
      for (ZoneDepth zone : tooth.zones()) {
        lines.add(line(tooth, zone));
      }
    }
    return String.join("\r\n", lines) + "\r\n";
  }

  private static String line(ToothSurvey tooth, ZoneDepth zone) {
    List<String> cells = new ArrayList<>();
    cells.add(Integer.toString(tooth.tooth().number().fdi()));
    cells.add(zone.zone().label());
    cells.add(number(zone.depthMm(), 3));
    if (zone.deepest().isEmpty()) {
      cells.addAll(List.of("", "", "", "", "", "", number(zone.hiddenMm(), 3), "", "", ""));
      return String.join(",", cells);
    }
    ZoneDepth.Deepest deepest = zone.deepest().get();
    RodReading reading = deepest.reading();
    cells.add(number(reading.uncertaintyMm(), 3));
    cells.add(number(reading.fitsMm(), 2));
    cells.add(number(deepest.fromMarginMm(), 3));
    cells.add(number(reading.belowSurveyLineMm(), 3));
    cells.add(number(reading.convergenceDeg(), 1));
    cells.add(number(reading.depthAtReferenceMm(), 3));
    cells.add(number(zone.hiddenMm(), 3));
    cells.add(number(deepest.point().x(), 4));
    cells.add(number(deepest.point().y(), 4));
    cells.add(number(deepest.point().z(), 4));
    return String.join(",", cells);
  }

  private static String number(double value, int digits) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + digits + "f", value) : "";
  }
}
