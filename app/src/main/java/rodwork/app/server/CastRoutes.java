package rodwork.app.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenDemo;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.ThinnedCast;
import rodwork.app.report.Json;
import rodwork.app.report.Words;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.LengthUnit;

/** The HTTP half of docs/protocol.md: casts are opened, described, turned and closed. */
final class CastRoutes {
  private static final int CREATED = 201;

  private final Shelf shelf;
  private final long largestUpload;
  private final Object demoLock = new Object();

  CastRoutes(Shelf shelf, long largestUpload) {
    this.shelf = shelf;
    this.largestUpload = largestUpload;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/casts", this::list);
    routes.post("/api/casts", this::open);
    routes.post("/api/casts/demo/{jaw}", this::openDemo);
    routes.get("/api/casts/{id}", this::info);
    routes.delete("/api/casts/{id}", this::close);
    routes.post("/api/casts/{id}/frame", this::frame);
    routes.get("/api/casts/{id}/mesh", this::mesh);
  }

  private void list(Context request) {
    ObjectNode json = Json.object();
    ArrayNode casts = json.putArray("casts");
    for (Map.Entry<String, OpenedCast> cast : shelf.all()) {
      casts.add(CastJson.card(cast.getKey(), cast.getValue()));
    }
    json.putArray("demo").add("lower").add("upper");
    answer(request, json);
  }

  private void open(Context request) throws IOException {
    String name = fileName(request.queryParam("name"));
    Optional<LengthUnit> unit = unit(request.queryParam("unit"));
    CastOptions options = new CastOptions(jaw(request.queryParam("jaw")), FrameHints.NONE, unit);
    shelf.checkRoom();
    byte[] content = upload(request, name);
    OpenedCast cast = OpenCast.of(content, name, options, Watch.NONE);
    request.status(CREATED);
    answer(request, CastJson.info(shelf.add(cast, Scan.of(name, content, unit)), shelf));
  }

  private void openDemo(Context request) {
    Jaw jaw =
        CastOptions.jawNamed(request.pathParam("jaw"))
            .orElseThrow(() -> AppRefusal.NOT_FOUND.with(request.path()));
    String id = demoId(jaw);
    if (shelf.find(id).isEmpty()) {
      request.status(CREATED);
    }
    demo(jaw);
    answer(request, CastJson.info(id, shelf));
  }

  /** The demo cast of a jaw, opened once however many ask at the same time. */
  OpenedCast demo(Jaw jaw) {
    String id = demoId(jaw);
    synchronized (demoLock) {
      Optional<OpenedCast> there = shelf.find(id);
      if (there.isPresent()) {
        return there.get();
      }
      shelf.checkRoom();
      OpenedCast opened = OpenDemo.of(jaw, Watch.NONE);
      shelf.addAs(id, opened);
      return opened;
    }
  }

  private static String demoId(Jaw jaw) {
    return "demo-" + Words.jaw(jaw);
  }

  private void info(Context request) {
    String id = request.pathParam("id");
    answer(request, CastJson.info(id, shelf));
  }

  private void close(Context request) {
    shelf.remove(request.pathParam("id"));
    request.status(204);
  }

  private void frame(Context request) {
    String id = request.pathParam("id");
    JsonNode body = body(request);
    JsonNode named = body.path("jaw");
    Jaw jaw = jaw(named.isTextual() ? named.asText() : null);
    FrameHints hints = new FrameHints(direction(body, "up"), direction(body, "front"));
    JsonNode known = body.path("upUncertaintyDeg");
    OptionalDouble upDeg =
        known.isNumber() && hints.up() != null
            ? OptionalDouble.of(Math.clamp(known.asDouble(), 0, 90))
            : OptionalDouble.empty();
    shelf.change(
        id,
        cast -> {
          OpenedCast turned = cast.withFrame(jaw, hints);
          return upDeg.isPresent() ? turned.knownWithin(upDeg.getAsDouble()) : turned;
        });
    answer(request, CastJson.info(id, shelf));
  }

  private void mesh(Context request) {
    request.contentType("application/octet-stream");
    String id = request.pathParam("id");
    if ("true".equals(request.queryParam("thinned"))) {
      ThinnedCast thinned = shelf.thinned(id);
      request.result(MeshFrame.of(thinned.mesh(), thinned.surface()));
    } else {
      OpenedCast cast = shelf.get(id);
      request.result(MeshFrame.of(cast.mesh(), cast.surface()));
    }
  }

  /** The body as it comes, but no more of it than the limit. */
  private byte[] upload(Context request, String name) throws IOException {
    long announced = request.req().getContentLengthLong();
    if (announced > largestUpload) {
      throw tooBig(name);
    }
    try (InputStream in = request.req().getInputStream()) {
      byte[] content = in.readNBytes((int) Math.min(largestUpload + 1, Integer.MAX_VALUE - 8));
      if (content.length > largestUpload) {
        throw tooBig(name);
      }
      if (content.length == 0) {
        throw AppRefusal.UPLOAD_EMPTY.with(name);
      }
      return content;
    }
  }

  private RuntimeException tooBig(String name) {
    return AppRefusal.UPLOAD_TOO_BIG.with(
        name, String.format(Locale.ROOT, "%.0f", largestUpload / (double) (1 << 20)));
  }

  /** The last part of a path, without what cannot be shown in one line. */
  private static String fileName(@Nullable String given) {
    String name = given == null ? "" : given.replaceAll("\\p{Cntrl}", " ").strip();
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return last.isEmpty() ? "scan" : last.substring(0, Math.min(last.length(), 120));
  }

  private static Jaw jaw(@Nullable String name) {
    return name == null
        ? Jaw.UNKNOWN
        : CastOptions.jawNamed(name)
            .orElseThrow(() -> unreadable("jaw is \"" + name + "\", not upper or lower"));
  }

  private static Optional<LengthUnit> unit(@Nullable String name) {
    return name == null
        ? Optional.empty()
        : Optional.of(
            CastOptions.unitNamed(name)
                .orElseThrow(() -> unreadable("unit is \"" + name + "\", not mm, cm, m or in")));
  }

  private static @Nullable Vec3 direction(JsonNode body, String name) {
    JsonNode given = body.path(name);
    if (given.isNull() || given.isMissingNode()) {
      return null;
    }
    Vec3 direction = Requests.vector(given, name);
    if (!(direction.length() > 0)) {
      throw unreadable(name + " has no direction, its length is 0");
    }
    return direction;
  }

  private static JsonNode body(Context request) {
    try {
      return Json.read(request.body());
    } catch (JsonProcessingException broken) {
      throw unreadable("the body is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  private static RuntimeException unreadable(String why) {
    return AppRefusal.REQUEST_UNREADABLE.with(why);
  }

  private static void answer(Context request, ObjectNode json) {
    request.contentType("application/json");
    request.result(Json.compact(json));
  }
}
