package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.report.AbutmentsJson;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.Json;
import rodwork.design.abutment.Abutments;
import rodwork.design.course.ArmShape;
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
            arms(body.path("arms")),
            shelf.opposingScan(id));
    request.contentType("application/json");
    request.result(
        Json.compact(
            AbutmentsJson.of(JudgeAbutments.of(teeth, asked, shelf.rulebook(id), Watch.NONE))));
  }

  /**
   * Arms shaped by hand: {@code {"34 distal":{"family":"i-bar","pulls":[{"at":1,"to":[x,y,z]}]}}}.
   */
  private static Map<Abutments.ArmKey, ArmShape> arms(JsonNode json) {
    Map<Abutments.ArmKey, ArmShape> arms = new HashMap<>();
    for (Map.Entry<String, JsonNode> row : json.properties()) {
      String name = row.getKey();
      boolean mesial = name.endsWith(" mesial");
      if (!mesial && !name.endsWith(" distal")) {
        throw Requests.unreadable("\"" + name + "\" is no row, such as \"34 distal\"");
      }
      List<ArmShape.Pull> pulls = new ArrayList<>();
      for (JsonNode pull : row.getValue().path("pulls")) {
        double at = Requests.number(pull.path("at"), "at");
        if (at < 0 || at > 1) {
          throw Requests.unreadable("at is a share of the arm from 0 to 1, not " + at);
        }
        pulls.add(new ArmShape.Pull(at, Requests.vector(pull.path("to"), "to")));
      }
      arms.put(
          new Abutments.ArmKey(
              Requests.tooth(name.substring(0, name.indexOf(' '))),
              mesial ? Surface.MESIAL : Surface.DISTAL,
              row.getValue().path("family").asText()),
          new ArmShape(pulls));
    }
    return arms;
  }
}
