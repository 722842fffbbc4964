package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.dentition.Dentition;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.ProposeTripod;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.Json;
import rodwork.app.report.TripodJson;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.Gauges;
import rodwork.survey.tripod.Recovery;
import rodwork.survey.tripod.Rescan;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodPlaces;
import rodwork.survey.tripod.TripodRules;

/** Tripod marks, and the path found again: docs/protocol.md. */
final class TripodRoutes {
  /** A mark goes to the level line of the other two within this of where it was wanted [mm]. */
  private static final double REACH_MM = 5;

  private static final String NAME = "the tripod";

  private final Shelf shelf;
  private @Nullable Places last;

  TripodRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  /** Where marks may be set on one cast at one path; kept while a mark is moved about. */
  private record Places(OpenedCast cast, Vec3 axis, TripodPlaces places) {}

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/tripod", this::propose);
    routes.post("/api/casts/{id}/tripod/move", this::move);
    routes.post("/api/casts/{id}/recover", this::recover);
    routes.post("/api/casts/{id}/recover/rescan", this::carryOver);
  }

  private void propose(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    Vec3 axis = new WantedPath.AtTilt(Requests.tilt(Requests.json(request))).on(cast).axis();
    Tripod tripod = ProposeTripod.of(cast, places(id, cast, axis), dentition(id), Watch.NONE);
    answer(request, json(id, cast, tripod));
  }

  /** The teeth as they were last found; null where they were not. */
  private @Nullable Dentition dentition(String id) {
    return shelf.teeth(id).map(FoundTeeth::dentition).orElse(null);
  }

  private void move(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    JsonNode body = Requests.json(request);
    Tripod tripod = TripodJson.read(body.path("tripod"), NAME);
    Vec3 to = Requests.vector(body.path("to"), "to");
    int which = Requests.index(body.path("which"), "which", tripod.marks().size());
    Tripod moved = places(id, cast, tripod.axis()).moved(tripod, which, to, REACH_MM);
    answer(request, json(id, cast, moved));
  }

  private void recover(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    JsonNode body = Requests.json(request);
    Tripod kept = TripodJson.read(body.path("tripod"), NAME);
    List<Vec3> points = new ArrayList<>();
    body.path("points").forEach(point -> points.add(Requests.vector(point, "points")));
    Recovery found = Recovery.of(kept, points, rules(id));
    ObjectNode json = axis(cast, found.axis());
    Json.put(json, "axisErrorDeg", found.boundDeg());
    Json.put(json, "disagreementMm", found.disagreementMm());
    answer(request, json);
  }

  /** A path of another open cast, of which this one is a rescan. */
  private void carryOver(Context request) {
    String id = request.pathParam("id");
    OpenedCast again = shelf.get(id);
    JsonNode body = Requests.json(request);
    OpenedCast first = shelf.get(body.path("first").asText());
    Vec3 axis = new WantedPath.AtTilt(Requests.tilt(body)).on(first).axis();
    Rescan laid = Rescan.of(side(first), side(again), rules(id), Watch.NONE);
    ObjectNode json = axis(again, laid.axis(axis));
    Json.put(json, "share", laid.match().share());
    Json.put(json, "medianMm", laid.match().medianMm());
    Json.put(json, "rmsMm", laid.match().rmsMm());
    answer(request, json);
  }

  private static Rescan.Side side(OpenedCast cast) {
    return new Rescan.Side(
        cast.mesh(), cast.surface(), cast.finding() == null ? null : cast.finding().frame());
  }

  /** An axis found again, with the tilt at which this cast then stands. */
  private static ObjectNode axis(OpenedCast cast, Vec3 axis) {
    ObjectNode json = Json.object();
    json.set("axis", Json.direction(axis));
    json.set(
        "tilt", Json.orNull(TripodJson.tiltOrNull(new WantedPath.AlongAxis(axis).on(cast).tilt())));
    return json;
  }

  private ObjectNode json(String id, OpenedCast cast, Tripod tripod) {
    return TripodJson.of(
        tripod,
        new WantedPath.AlongAxis(tripod.axis()).on(cast).tilt(),
        ProposeTripod.bearings(cast, tripod, dentition(id), rules(id)),
        rules(id));
  }

  private TripodRules rules(String id) {
    return shelf.rulebook(id).tripod();
  }

  private synchronized TripodPlaces places(String id, OpenedCast cast, Vec3 axis) {
    Places known = last;
    if (known == null || !known.cast.equals(cast) || known.axis.angleDegTo(axis) > 1e-6) {
      known =
          new Places(
              cast,
              axis,
              new TripodPlaces(
                  cast.surveyor(),
                  cast.surveyor().survey(axis, Gauges.COMMON, Watch.NONE),
                  rules(id)));
      last = known;
    }
    return known.places;
  }

  private static void answer(Context request, ObjectNode json) {
    request.contentType("application/json");
    request.result(Json.compact(json));
  }
}
