package rodwork.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameFinding;
import rodwork.app.operation.SurveyedCast;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.IntakeReport;
import rodwork.survey.GaugeMark;
import rodwork.survey.Gauges;
import rodwork.survey.SurveyFigures;
import rodwork.survey.SurveyLine;
import rodwork.survey.Tilt;

/** A survey as a short table for a person. */
public final class SurveyTable {
  private static final int SHOWN_PLACES = 3;
  private static final String CARE =
      "An aid: the prescriber examines the patient, decides and signs.";

  private SurveyTable() {}

  /** The lines of the table. */
  public static List<String> of(SurveyedCast surveyed, Watch watch) {
    List<String> lines = new ArrayList<>();
    cast(lines, surveyed);
    tilt(lines, surveyed);
    figures(lines, surveyed, watch);
    curves(lines, surveyed);
    surveyed.notes().forEach(note -> row(lines, "Note", note));
    lines.add(CARE);
    return lines;
  }

  private static void cast(List<String> lines, SurveyedCast surveyed) {
    IntakeReport report = surveyed.cast().cast().report();
    row(
        lines,
        "Cast",
        String.format(
            Locale.ROOT,
            "%s, %s, %,d triangles, edges %.2f mm",
            surveyed.cast().name(),
            jaw(surveyed),
            report.kept().triangles(),
            report.edges().medianMm()));
    if (surveyed.cast().surface().hasBase()) {
      row(
          lines,
          "Base",
          String.format(
              Locale.ROOT,
              "%,d triangles of plaster base, left out of all figures",
              surveyed.cast().surface().baseTriangleCount()));
    }
  }

  private static void figures(List<String> lines, SurveyedCast surveyed, Watch watch) {
    SurveyFigures figures = surveyed.survey().figures(watch);
    row(
        lines,
        "Undercut",
        String.format(
            Locale.ROOT,
            "area %.0f mm² (over %.2f mm deep), volume %.0f mm³",
            figures.areaMm2(),
            surveyed.cast().surveyor().rules().shallow().value(),
            figures.volumeMm3()));
    String name = "Deepest";
    for (SurveyFigures.Deep deep : figures.deepest().stream().limit(SHOWN_PLACES).toList()) {
      row(
          lines,
          name,
          String.format(
              Locale.ROOT, "%.2f mm at %s", deep.depthMm(), SurveyJson.place(deep.point())));
      name = "";
    }
  }

  private static void curves(List<String> lines, SurveyedCast surveyed) {
    List<SurveyLine> found = surveyed.survey().lines();
    row(
        lines,
        "Survey lines",
        String.format(
            Locale.ROOT,
            "%d pieces, %.0f mm; %d short or shallow ones not counted",
            found.size(),
            found.stream().mapToDouble(SurveyLine::lengthMm).sum(),
            surveyed.survey().hiddenLines()));
    for (double size : surveyed.survey().gauges().sizesMm()) {
      List<GaugeMark> marks =
          surveyed.survey().marks().stream().filter(m -> m.gaugeMm() == size).toList();
      row(
          lines,
          "Gauge",
          String.format(
              Locale.ROOT,
              "%s: %d marks, %.0f mm",
              Gauges.name(size),
              marks.size(),
              marks.stream().mapToDouble(GaugeMark::lengthMm).sum()));
    }
  }

  private static String jaw(SurveyedCast surveyed) {
    String jaw = Words.jaw(surveyed.cast().jaw());
    return jaw == null ? "upper or lower not said" : jaw;
  }

  private static void tilt(List<String> lines, SurveyedCast surveyed) {
    Vec3 axis = surveyed.path().axis();
    row(
        lines,
        "Axis",
        String.format(
            Locale.ROOT, "%.4f, %.4f, %.4f in the scan frame", axis.x(), axis.y(), axis.z()));
    FrameFinding finding = surveyed.cast().finding();
    row(
        lines,
        "Tilt",
        finding == null
            ? "not known, for the arch frame is not"
            : String.format(
                Locale.ROOT,
                "%stotal %.1f° (reference ±%.1f°)",
                angles(surveyed.path().tilt()),
                SurveyJson.totalTiltDeg(surveyed),
                finding.frame().upUncertaintyDeg()));
  }

  /** "anterior 2.0°, right −1.5°, "; empty where right and left are not known. */
  static String angles(@Nullable Tilt tilt) {
    return tilt == null
        ? ""
        : "anterior " + degrees(tilt.anteriorDeg()) + ", right " + degrees(tilt.rightDeg()) + ", ";
  }

  /** An angle with one digit and a true minus sign. */
  static String degrees(double angle) {
    String text = String.format(Locale.ROOT, "%.1f°", Math.abs(angle));
    return angle <= -0.05 ? "−" + text : text;
  }

  private static void row(List<String> lines, String name, String text) {
    lines.add(String.format(Locale.ROOT, "%-13s %s", name, text));
  }
}
