package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.AbutmentsJson;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.ChartReader;
import rodwork.app.report.Json;
import rodwork.casework.rulebook.Rulebook;
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
    CastTeeth teeth = teeth(request.pathParam("id"));
    WantedPath path =
        body.hasNonNull("axis")
            ? new WantedPath.AlongAxis(Requests.axis(body))
            : body.hasNonNull("tilt")
                ? new WantedPath.AtTilt(Requests.tilt(body))
                : WantedPath.reference();
    Chart chart =
        body.hasNonNull("chart")
            ? ChartReader.read(Json.pretty(body.get("chart")), "the chart of the request")
            : null;
    SortedSet<ToothNumber> wanted = new TreeSet<>();
    body.path("teeth").forEach(fdi -> wanted.add(Requests.tooth(fdi)));
    JudgeAbutments.Wanted asked =
        new JudgeAbutments.Wanted(path, wanted, chart, AnswerReader.of(body.path("answers")));
    request.contentType("application/json");
    request.result(
        Json.compact(
            AbutmentsJson.of(JudgeAbutments.of(teeth, asked, Rulebook.shipped(), Watch.NONE))));
  }

  private CastTeeth teeth(String id) {
    FoundTeeth teeth = shelf.teeth(id).orElse(null);
    ToothFinding finding = teeth == null ? null : teeth.finding();
    Dentition dentition = teeth == null ? null : teeth.dentition();
    if (teeth == null || finding == null || dentition == null) {
      shelf.get(id);
      throw AppRefusal.ABUTMENTS_NEED_TEETH.with();
    }
    OpenedCast cast = teeth.cast();
    Arch arch = new Arch(cast.cast().topology(), cast.surface(), cast.frame());
    return new CastTeeth(cast, arch, finding, dentition);
  }
}
