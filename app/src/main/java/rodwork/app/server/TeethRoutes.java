package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.TeethPlane;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.NextNumber;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.ChartReader;
import rodwork.app.report.Json;
import rodwork.app.report.ToothHintsReader;
import rodwork.app.report.Words;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;

/** The teeth of a cast, found from what a person says of them: docs/protocol.md. */
final class TeethRoutes {
  private final Shelf shelf;

  TeethRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/teeth", this::find);
    routes.get("/api/casts/{id}/teeth/labels", this::labels);
    routes.post("/api/casts/{id}/teeth/number", this::number);
    routes.post("/api/casts/{id}/teeth/plane", this::plane);
  }

  private void find(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    FoundTeeth before = shelf.teeth(id).orElse(null);
    JsonNode body = Requests.json(request);
    Chart chart = chart(cast, body.path("chart"));
    FoundTeeth found = FoundTeeth.of(cast, hints(cast, body, chart), chart, before, Watch.NONE);
    shelf.setTeeth(id, found);
    request.contentType("application/json");
    request.result(Json.compact(TeethJson.info(found)));
  }

  /** The FDI number of each triangle of the mesh, a byte each; 0 for gum. */
  private void labels(Context request) {
    OpenedCast cast = shelf.get(request.pathParam("id"));
    byte[] bytes = new byte[cast.mesh().triangleCount()];
    ToothFinding finding =
        shelf.teeth(request.pathParam("id")).map(FoundTeeth::finding).orElse(null);
    if (finding != null) {
      for (int t = 0; t < bytes.length; t++) {
        bytes[t] = (byte) finding.labels().of(t);
      }
    }
    request.contentType("application/octet-stream");
    request.result(bytes);
  }

  /** The number that a tooth at a place most likely has. */
  private void number(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    Vec3 point = Requests.vector(Requests.json(request).path("point"), "point");
    Optional<FoundTeeth> known = shelf.teeth(id);
    ToothNumber number =
        NextNumber.at(
            cast.frame(),
            cast.jaw(),
            known.map(FoundTeeth::dentition).orElse(null),
            known.<Set<ToothNumber>>map(there -> there.chart().missing()).orElse(Set.of()),
            point);
    request.contentType("application/json");
    request.result(Json.compact(Json.object().put("tooth", number.fdi())));
  }

  /** The occlusal plane over the teeth found, or through three points, to be taken or left. */
  private void plane(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    JsonNode points = Requests.json(request).path("points");
    TeethPlane plane;
    int teeth = 0;
    if (points.isArray()) {
      if (points.size() != 3) {
        throw AppRefusal.REQUEST_UNREADABLE.with("points are not three places");
      }
      List<Vec3> at = new ArrayList<>();
      points.forEach(point -> at.add(Requests.vector(point, "points")));
      plane = TeethPlane.through(cast.frame(), at.get(0), at.get(1), at.get(2));
    } else {
      Dentition dentition =
          shelf
              .teeth(id)
              .map(FoundTeeth::dentition)
              .orElseThrow(AppRefusal.PLANE_NEEDS_TEETH::with);
      plane = TeethPlane.over(cast.frame(), dentition.inOrder());
      teeth = dentition.inOrder().size();
    }
    request.contentType("application/json");
    request.result(Json.compact(PlaneJson.of(plane, cast.frame(), teeth)));
  }

  /**
   * The chart as docs/schema/chart.schema.json has it; nothing is written on it where none came.
   */
  private static Chart chart(OpenedCast cast, JsonNode given) {
    if (cast.jaw() == Jaw.UNKNOWN) {
      throw AppRefusal.TEETH_NEED_JAW.with();
    }
    if (given.isMissingNode() || given.isNull()) {
      return Chart.blank(cast.jaw());
    }
    Chart chart = ChartReader.read(Json.compact(given), "The chart that the bench sent");
    if (chart.jaw() != cast.jaw()) {
      throw AppRefusal.TWO_JAWS.with(
          "the cast is " + Words.jaw(cast.jaw()) + ", the chart " + Words.jaw(chart.jaw()));
    }
    return chart;
  }

  private static ToothHints hints(OpenedCast cast, JsonNode body, Chart chart) {
    ToothHintsReader reader = new ToothHintsReader(cast.jaw(), AppRefusal.REQUEST_UNREADABLE::with);
    Set<Integer> missing = new TreeSet<>();
    chart.missing().forEach(tooth -> missing.add(tooth.fdi()));
    for (JsonNode number : body.path("missing")) {
      missing.add(reader.fdi(number));
    }
    return reader.hints(missing, body);
  }
}
