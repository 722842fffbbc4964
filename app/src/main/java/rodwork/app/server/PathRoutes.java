package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.SearchPath;
import rodwork.app.report.Json;
import rodwork.app.report.PathJson;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.PathMap;
import rodwork.survey.path.PathSearch;

/** The search for the path on a cast whose teeth are known: docs/protocol.md. */
final class PathRoutes {
  private final Shelf shelf;
  private @Nullable CastTeeth lastTeeth;
  private SearchPath.@Nullable Prepared last;

  PathRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/path", this::search);
    routes.post("/api/casts/{id}/path/compare", this::compare);
  }

  private void search(Context request) {
    JsonNode body = Requests.json(request);
    SearchPath.Prepared prepared = prepared(request.pathParam("id"));
    double cone = prepared.rules().path().cone().value();
    ObjectNode json;
    if (body.path("coarse").asBoolean(false)) {
      json = Json.object();
      json.set("map", map(prepared.search().coarse(cone, Watch.NONE)));
    } else {
      SearchPath.Found found = prepared.found(cone, Watch.NONE);
      json = PathJson.of(found);
      json.set("map", map(found.map()));
    }
    request.contentType("application/json");
    request.result(Json.compact(json));
  }

  /** Two tilts side by side, tooth by tooth. */
  private void compare(Context request) {
    JsonNode body = Requests.json(request);
    Tilt from = Requests.tilt(body, "from");
    Tilt to = Requests.tilt(body, "to");
    SearchPath.Prepared prepared = prepared(request.pathParam("id"));
    PathSearch search = prepared.search();
    request.contentType("application/json");
    request.result(
        Json.compact(
            PathJson.sideBySide(
                prepared.sites().planes(),
                PathComparison.of(
                    search.at(from, Watch.NONE),
                    search.at(to, Watch.NONE),
                    prepared.rules().path()))));
  }

  /** What belongs to a cast and its teeth is made once; one cast is searched at a time. */
  private synchronized SearchPath.Prepared prepared(String id) {
    CastTeeth teeth = shelf.known(id, AppRefusal.PATH_NEEDS_TEETH);
    SearchPath.Prepared known = last;
    if (known != null && teeth.equals(lastTeeth)) {
      return known;
    }
    known = SearchPath.prepare(teeth, SearchPath.SearchRules.SHIPPED, Watch.NONE);
    lastTeeth = teeth;
    last = known;
    return known;
  }

  /** Each tilt as anterior, right [degrees], the whole worth, and the worth of each factor. */
  private static ObjectNode map(PathMap map) {
    ObjectNode json = Json.object();
    Json.put(json, "stepDeg", map.stepDeg());
    Json.put(json, "coneDeg", map.coneDeg());
    ArrayNode tilts = json.putArray("tilts");
    for (PathFactors tilt : map.tilts()) {
      ArrayNode one = tilts.addArray();
      one.add(short3(tilt.tilt().anteriorDeg()));
      one.add(short3(tilt.tilt().rightDeg()));
      one.add(short3(tilt.worth()));
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        one.add(short3(tilt.worth(factor)));
      }
    }
    return json;
  }

  private static double short3(double value) {
    return Math.rint(value * 1000) / 1000 + 0.0;
  }
}
