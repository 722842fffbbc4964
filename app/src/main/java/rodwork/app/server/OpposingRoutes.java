package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.ToothRoom;
import rodwork.app.AppRefusal;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.report.CaseOpposing;
import rodwork.app.report.Json;
import rodwork.app.report.OpposingJson;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;

/** The opposing scan of a cast, one of the casts that are open: docs/protocol.md. */
final class OpposingRoutes {
  private final Shelf shelf;

  OpposingRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/casts/{id}/opposing", this::told);
    routes.post("/api/casts/{id}/opposing", this::lay);
    routes.get("/api/casts/{id}/opposing/clearance", this::clearance);
  }

  private void told(Context request) {
    String id = request.pathParam("id");
    shelf.get(id);
    answer(request, id, shelf.opposing(id).orElse(null));
  }

  private void lay(Context request) {
    String id = request.pathParam("id");
    OpenedCast cast = shelf.get(id);
    JsonNode body = Requests.json(request);
    String other = name(body, "opposing");
    String bite = name(body, "bite");
    if (other == null) {
      shelf.takeOpposingAway(id);
      answer(request, id, null);
      return;
    }
    Cast both = bite == null ? null : shelf.get(bite).cast();
    LaidOpposing laid =
        new LaidOpposing(other, bite, OpposingScan.of(cast, shelf.get(other), both, Watch.NONE));
    shelf.setOpposing(id, cast, laid);
    shelf.setOpposingFiles(
        id, new CaseOpposing(shelf.file(other), bite == null ? null : shelf.file(bite)));
    answer(request, id, laid);
  }

  /** The room over each vertex of the mesh, a float each; NaN where it is not known. */
  private void clearance(Context request) {
    String id = request.pathParam("id");
    int vertices = shelf.get(id).mesh().vertexCount();
    LaidOpposing laid = shelf.opposing(id).orElse(null);
    ByteBuffer bytes =
        ByteBuffer.allocate(Math.multiplyExact(4, vertices)).order(ByteOrder.LITTLE_ENDIAN);
    if (laid == null) {
      for (int v = 0; v < vertices; v++) {
        bytes.putFloat(Float.NaN);
      }
    } else {
      bytes.asFloatBuffer().put(laid.scan().clearance().map(Watch.NONE));
    }
    request.contentType("application/octet-stream");
    request.result(bytes.array());
  }

  private void answer(Context request, String id, @Nullable LaidOpposing laid) {
    ObjectNode json = Json.object();
    if (laid == null) {
      json.putNull("opposing");
      CaseOpposing kept = shelf.opposingFiles(id);
      json.put("kept", kept == null ? null : kept.opposing().name());
    } else {
      ObjectNode told = OpposingJson.of(laid.scan());
      told.put("id", laid.id());
      told.put("biteId", laid.bite());
      Dentition dentition = shelf.teeth(id).map(FoundTeeth::dentition).orElse(null);
      told.set(
          "room",
          OpposingJson.rooms(
              dentition == null
                  ? List.of()
                  : ToothRoom.of(laid.scan().clearance(), dentition, shelf.get(id).mesh())));
      json.set("opposing", told);
    }
    request.contentType("application/json");
    request.result(Json.compact(json));
  }

  private static @Nullable String name(JsonNode body, String member) {
    JsonNode given = body.path(member);
    if (given.isMissingNode() || given.isNull()) {
      return null;
    }
    if (!given.isTextual()) {
      throw AppRefusal.REQUEST_UNREADABLE.with(member + " is no id of an open cast");
    }
    return given.asText();
  }
}
