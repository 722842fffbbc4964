package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.SearchPath;
import rodwork.app.report.Json;
import rodwork.app.report.PathJson;
import rodwork.app.report.Words;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.PathMap;
import rodwork.survey.path.PathSearch;
import rodwork.survey.path.Zone;

/** The search for the path on a cast whose teeth are known: docs/protocol.md. */
final class PathRoutes {
  private final Shelf shelf;
  private final PlanRoutes plans;
  private @Nullable Ready last;

  /** A cast made ready, and what for. */
  private record Ready(Key key, SearchPath.Prepared prepared) {}

  /**
   * All that a search is made ready from.
   *
   * @param opposing what lies over the cast, where the parts of a plan are in the way: the plan
   *     goes by it; null: nothing does
   */
  record Key(CastTeeth teeth, JsonNode inTheWay, @Nullable LaidOpposing opposing) {
    static Key of(Shelf shelf, String id, JsonNode inTheWay) {
      return new Key(
          shelf.known(id, AppRefusal.PATH_NEEDS_TEETH),
          inTheWay,
          inTheWay.path("plan").isObject() ? shelf.opposing(id).orElse(null) : null);
    }
  }

  /**
   * The routes.
   *
   * @param plans make the plan whose parts a search goes by
   */
  PathRoutes(Shelf shelf, PlanRoutes plans) {
    this.shelf = shelf;
    this.plans = plans;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/path", this::search);
    routes.post("/api/casts/{id}/path/compare", this::compare);
  }

  /** A coarse map at once, then every tilt; told line by line, and stopped when nobody listens. */
  private void search(Context request) throws IOException {
    String id = request.pathParam("id");
    JsonNode body = Requests.json(request);
    Key.of(shelf, id, body.path("inTheWay"));
    leftOut(body.path("inTheWay"));
    request.contentType("application/x-ndjson");
    SearchLines lines = new SearchLines(request.res().getOutputStream());
    try {
      SearchPath.Prepared prepared = prepared(id, body, lines);
      double cone = prepared.rules().cone().value();
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
    SearchPath.Prepared prepared = prepared(request.pathParam("id"), body, Watch.NONE);
    PathSearch search = prepared.search();
    request.contentType("application/json");
    request.result(
        Json.compact(
            PathJson.sideBySide(
                prepared.sites().planes(),
                PathComparison.of(
                    search.at(from, Watch.NONE), search.at(to, Watch.NONE), prepared.rules()))));
  }

  /** What belongs to a cast, its teeth and what is in the way is made once. */
  private SearchPath.Prepared prepared(String id, JsonNode body, Watch watch) {
    Key key = Key.of(shelf, id, body.path("inTheWay"));
    SearchPath.Prepared there = ready(key);
    if (there != null) {
      return there;
    }
    // A plan takes seconds: others are not kept waiting for it.
    JsonNode plan = key.inTheWay.path("plan");
    SearchPath.InTheWay inTheWay =
        new SearchPath.InTheWay(
            leftOut(key.inTheWay), plan.isObject() ? plans.planned(id, plan, watch).plan() : null);
    return made(id, key, inTheWay, watch);
  }

  private synchronized SearchPath.@Nullable Prepared ready(Key key) {
    Ready ready = last;
    return ready != null && key.equals(ready.key) ? ready.prepared : null;
  }

  /** One cast is made ready at a time. */
  private synchronized SearchPath.Prepared made(
      String id, Key key, SearchPath.InTheWay inTheWay, Watch watch) {
    SearchPath.Prepared meanwhile = ready(key);
    if (meanwhile != null) {
      return meanwhile;
    }
    SearchPath.Prepared prepared =
        SearchPath.prepare(key.teeth, shelf.rulebook(id), inTheWay, watch);
    last = new Ready(key, prepared);
    return prepared;
  }

  /** The kinds of surface that do not count as in the way. */
  private static Set<Zone.Kind> leftOut(JsonNode inTheWay) {
    Set<Zone.Kind> kinds = new TreeSet<>();
    for (JsonNode word : inTheWay.path("leftOut")) {
      kinds.add(
          Words.zoneKind(word.asText())
              .orElseThrow(
                  () -> Requests.unreadable("leftOut: " + word + " is no kind of surface")));
    }
    return kinds;
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
