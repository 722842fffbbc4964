package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.concurrent.CancellationException;
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

  /** A coarse map at once, then every tilt; told line by line, and stopped when nobody listens. */
  private void search(Context request) throws IOException {
    String id = request.pathParam("id");
    known(id);
    request.contentType("application/x-ndjson");
    SearchLines lines = new SearchLines(request.res().getOutputStream());
    try {
      SearchPath.Prepared prepared = prepared(id, lines);
      double cone = prepared.rules().path().cone().value();
      lines.send("coarse", map(prepared.search().coarse(cone, lines)));
      SearchPath.Found found = prepared.found(cone, lines);
      ObjectNode json = PathJson.of(found);
      json.set("map", map(found.map()));
      lines.send("found", json);
    } catch (CancellationException _) {
      // Nobody waits for an answer.
    } catch (RuntimeException failure) {
      lines.send("problem", Problems.json(Problems.of(failure)));
    }
  }

  /** Two tilts side by side, tooth by tooth. */
  private void compare(Context request) {
    JsonNode body = Requests.json(request);
    Tilt from = Requests.tilt(body, "from");
    Tilt to = Requests.tilt(body, "to");
    SearchPath.Prepared prepared = prepared(request.pathParam("id"), Watch.NONE);
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

  /** What belongs to a cast and its teeth is made once; one cast is made ready at a time. */
  private synchronized SearchPath.Prepared prepared(String id, Watch watch) {
    CastTeeth teeth = known(id);
    SearchPath.Prepared ready = last;
    if (ready != null && teeth.equals(lastTeeth)) {
      return ready;
    }
    ready =
        SearchPath.prepare(
            teeth,
            new SearchPath.SearchRules(shelf.rulebook(id).path(), shelf.rulebook(id).planes()),
            watch);
    lastTeeth = teeth;
    last = ready;
    return ready;
  }

  private CastTeeth known(String id) {
    return shelf.known(id, AppRefusal.PATH_NEEDS_TEETH);
  }

  /**
   * Each tilt as anterior, right [degrees], the whole worth, the worth of each factor, and the
   * figure of each.
   */
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
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        one.add(short3(tilt.figure(factor)));
      }
    }
    return json;
  }

  private static double short3(double value) {
    return Math.rint(value * 1000) / 1000 + 0.0;
  }
}
