package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.report.AbutmentsJson;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.ArmsReader;
import rodwork.app.report.Json;
import rodwork.geometry.Watch;

/** The judgement of abutments on a cast whose teeth are known: docs/protocol.md. */
final class AbutmentRoutes {
  private final Shelf shelf;

  AbutmentRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/abutments", this::judge);
  }

  private void judge(Context request) {
    JsonNode body = Requests.json(request);
    String id = request.pathParam("id");
    CastTeeth teeth = shelf.known(id, AppRefusal.ABUTMENTS_NEED_TEETH);
    SortedSet<ToothNumber> wanted = new TreeSet<>();
    body.path("teeth").forEach(fdi -> wanted.add(Requests.tooth(fdi)));
    JudgeAbutments.Wanted asked =
        new JudgeAbutments.Wanted(
            Requests.path(body),
            wanted,
            Requests.chart(body),
            AnswerReader.of(body.path("answers")),
            ArmsReader.of(body.path("arms"), Requests::unreadable),
            shelf.opposingScan(id));
    request.contentType("application/json");
    request.result(
        Json.compact(
            AbutmentsJson.of(JudgeAbutments.of(teeth, asked, shelf.rulebook(id), Watch.NONE))));
  }
}
