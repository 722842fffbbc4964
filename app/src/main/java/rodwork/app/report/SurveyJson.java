package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameFinding;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.SurveyedCast;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.rules.Threshold;
import rodwork.survey.GaugeMark;
import rodwork.survey.SurveyFigures;
import rodwork.survey.SurveyLine;
import rodwork.survey.Tilt;

/** A survey as JSON: docs/schema/survey.schema.json. */
public final class SurveyJson {
  /** Changes whenever a program that reads the JSON would have to change. */
  private static final int FORMAT_VERSION = 1;

  private SurveyJson() {}

  /** The whole report of one survey. */
  public static ObjectNode of(SurveyedCast surveyed, Watch watch) {
    OpenedCast cast = surveyed.cast();
    ObjectNode json = Json.object();
    json.put("format", "rodwork survey");
    json.put("version", FORMAT_VERSION);
    json.set("intake", IntakeJson.of(cast.cast().report()));
    json.put("jaw", Words.jaw(cast.jaw()));
    ObjectNode base = json.putObject("base");
    base.put("triangles", cast.surface().baseTriangleCount());
    Json.put(base, "areaMm2", cast.surface().baseAreaMm2());
    FrameFinding finding = cast.finding();
    json.set("frame", Json.orNull(finding == null ? null : FrameJson.of(finding)));
    json.set("frameProblem", Json.orNull(problem(cast.frameProblem())));
    json.set("axis", Json.direction(surveyed.path().axis()));
    json.set("tilt", Json.orNull(tilt(surveyed.path().tilt())));
    Json.put(json, "totalTiltDeg", totalTiltDeg(surveyed));
    ArrayNode gauges = json.putArray("gaugesMm");
    surveyed.survey().gauges().sizesMm().forEach(gauges::add);
    SurveyFigures figures = surveyed.survey().figures(watch);
    Json.put(json, "undercutAreaMm2", figures.areaMm2());
    Json.put(json, "undercutVolumeMm3", figures.volumeMm3());
    json.set("deepest", deepest(figures));
    ArrayNode lines = json.putArray("surveyLines");
    for (SurveyLine line : surveyed.survey().lines()) {
      ObjectNode one = lines.addObject();
      one.put("kind", Words.kind(line));
      one.put("closed", line.closed());
      Json.put(one, "lengthMm", line.lengthMm());
      one.set("points", Json.points(line.points()));
    }
    json.put("hiddenSurveyLines", surveyed.survey().hiddenLines());
    ArrayNode marks = json.putArray("gaugeMarks");
    for (GaugeMark mark : surveyed.survey().marks()) {
      ObjectNode one = marks.addObject();
      one.put("gaugeMm", mark.gaugeMm());
      one.put("closed", mark.closed());
      Json.put(one, "lengthMm", mark.lengthMm());
      one.set("points", Json.points(mark.points()));
    }
    ArrayNode rules = json.putArray("rules");
    for (Threshold rule : cast.surveyor().rules().all()) {
      rules
          .addObject()
          .put("id", rule.id())
          .put("value", rule.value())
          .put("unit", rule.unit())
          .put("source", rule.source())
          .put("standing", rule.standing().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    json.set("notes", Json.texts(surveyed.notes()));
    return json;
  }

  /** The angle between the axis and the occlusal normal [degrees]; NaN without a frame. */
  public static double totalTiltDeg(SurveyedCast surveyed) {
    FrameFinding finding = surveyed.cast().finding();
    return finding == null ? Double.NaN : surveyed.path().axis().angleDegTo(finding.frame().z());
  }

  /** The deepest places, deepest first. */
  public static ArrayNode deepest(SurveyFigures figures) {
    ArrayNode deepest = Json.array();
    for (SurveyFigures.Deep deep : figures.deepest()) {
      ObjectNode one = deepest.addObject();
      one.set("point", Json.point(deep.point()));
      Json.put(one, "depthMm", deep.depthMm());
    }
    return deepest;
  }

  private static @Nullable ObjectNode tilt(@Nullable Tilt tilt) {
    if (tilt == null) {
      return null;
    }
    ObjectNode json = Json.object();
    Json.put(json, "anteriorDeg", tilt.anteriorDeg());
    Json.put(json, "rightDeg", tilt.rightDeg());
    return json;
  }

  /** A refusal as code, message, advice. */
  public static @Nullable ObjectNode problem(@Nullable Refusal refusal) {
    return refusal == null
        ? null
        : Json.object()
            .put("code", refusal.code())
            .put("message", refusal.getMessage())
            .put("advice", refusal.advice());
  }

  /** Where a place lies, as a table says it [mm]. */
  static String place(Vec3 p) {
    return String.format(Locale.ROOT, "(%.2f, %.2f, %.2f)", p.x(), p.y(), p.z());
  }
}
