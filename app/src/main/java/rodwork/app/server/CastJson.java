package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.anatomy.FrameFinding;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.FrameJson;
import rodwork.app.report.IntakeJson;
import rodwork.app.report.Json;
import rodwork.app.report.Words;
import rodwork.casework.rulebook.Rulebook;
import rodwork.survey.Gauges;
import rodwork.survey.SurveyRules;

/** A cast as the bench is told of it: {@code CastCard} and {@code CastInfo} of docs/protocol.md. */
final class CastJson {
  private CastJson() {}

  static ObjectNode card(String id, OpenedCast cast) {
    return Json.object()
        .put("id", id)
        .put("name", cast.name())
        .put("jaw", Words.jaw(cast.jaw()))
        .put("triangles", cast.mesh().triangleCount());
  }

  /** An open cast, or one with the cuts of its mouth preparation. */
  static ObjectNode info(String id, Shelf shelf) {
    return info(id, shelf.get(id), shelf.rulebook(id));
  }

  private static ObjectNode info(String id, OpenedCast cast, Rulebook book) {
    SurveyRules rules = book.survey();
    ObjectNode json = card(id, cast);
    json.put("vertices", cast.mesh().vertexCount());
    Json.put(json, "edgeMm", cast.cast().report().edges().medianMm());
    json.put("accuracyMm", rules.scanAccuracy().value());
    json.set("intake", IntakeJson.of(cast.cast().report()));
    json.set("intakeLines", Json.texts(cast.cast().report().lines()));
    FrameFinding finding = cast.finding();
    json.set("frame", Json.orNull(finding == null ? null : FrameJson.of(finding)));
    json.set("frameProblem", Json.orNull(Problems.json(cast.frameProblem())));
    ArrayNode gauges = json.putArray("gaugesMm");
    Gauges.COMMON.sizesMm().forEach(gauges::add);
    json.put("capMm", rules.cap().value());
    json.put("noteTiltDeg", rules.tiltNote().value());
    json.put("warnTiltDeg", rules.tiltWarn().value());
    json.put("limitTiltDeg", rules.tiltLimit().value());
    json.put("shallowMm", rules.shallow().value());
    json.put("freeMm", rules.lineTolerance().value());
    json.put("holdsAtReferenceMm", book.path().holdsAtReference().value());
    json.put("shankRadiusMm", rules.shankRadius().value());
    json.put("shankReachMm", rules.shankReach().value());
    json.put("closedSpaceMm", book.spaces().closed().value());
    Json.put(
        json,
        "mobilityFirstMm",
        book.conflict("mobility-scale").map(c -> c.side().value()).orElse(Double.NaN));
    return json;
  }
}
