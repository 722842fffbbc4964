package rodwork.app.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CaseCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.BenchWork;
import rodwork.app.report.CaseOpposing;
import rodwork.app.report.CaseSaid;
import rodwork.app.report.ChartJson;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.Json;
import rodwork.app.report.Words;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.casework.store.StoreProblem;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;

/**
 * What lies on the bench, kept in a case and taken up again: docs/protocol.md.
 *
 * <p>The scan is kept byte for byte, chart and choices as the command line reads them, and the
 * bench's own document with its undo steps as it came.
 */
final class CaseRoutes {
  /** Names the content of the parts that were saved with the bench's own document. */
  private static final String WITH = "with";

  private static final int CREATED = 201;

  /** Years of undo steps fit into it. */
  private static final int MOST_BYTES = 32 << 20;

  private final Shelf shelf;
  private final Path folder;
  private @Nullable CaseStore opened;

  CaseRoutes(Shelf shelf, Path folder) {
    this.shelf = shelf;
    this.folder = folder;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/cases", this::list);
    routes.put("/api/cases/{code}", this::save);
    routes.post("/api/cases/{code}/open", this::open);
  }

  /** The store, made where there is none. */
  synchronized CaseStore store() {
    CaseStore there = opened;
    if (there == null) {
      there = CaseStore.open(folder);
      opened = there;
    }
    return there;
  }

  /** Each scan of each case that the bench can open. */
  private void list(Context request) {
    ObjectNode json = Json.object();
    ArrayNode cases = json.putArray("cases");
    for (CaseFile file : store().list()) {
      for (Map.Entry<PartName, Part> scan : file.parts(PartKind.SCAN)) {
        cases
            .addObject()
            .put("code", file.code().text())
            .put("jaw", Words.jaw(scan.getKey().jaw()))
            .put("scan", scan.getKey().label())
            .put("revision", file.now().number())
            .put("savedAt", file.now().at().toString());
      }
    }
    answer(request, json);
  }

  private void save(Context request) throws IOException {
    CaseCode code = new CaseCode(request.pathParam("code"));
    JsonNode body = body(request);
    String id = body.path("cast").asText();
    OpenedCast cast = shelf.get(id);
    if (!body.path("bench").isObject()) {
      throw AppRefusal.REQUEST_UNREADABLE.with("bench is missing or no object");
    }
    Scan scan = shelf.scan(id);
    CaseStore store = store();
    CaseFile file = null;
    if (body.hasNonNull("on")) {
      file = store.get(code);
      int on = body.get("on").asInt();
      if (file.now().number() != on) {
        throw StoreProblem.CASE_CHANGED.with(code, file.now().number(), on);
      }
    }
    CaseEdit edit = edit(id, cast.jaw(), scan, body, file);
    String action = body.path("action").asText("work on the bench");
    if (file == null) {
      request.status(CREATED);
      file = store.create(code, action, edit);
    } else {
      file = store.change(file, action, edit);
    }
    answer(request, standing(file));
  }

  private CaseEdit edit(String id, Jaw jaw, Scan scan, JsonNode body, @Nullable CaseFile before) {
    CaseEdit edit = CaseEdit.NONE;
    if (before == null) {
      edit =
          edit.put(CaseCast.RULEBOOK, shelf.rulebook(id).text().getBytes(StandardCharsets.UTF_8));
    }
    PartName scanName = new PartName(PartKind.SCAN, jaw, scan.name());
    if (before != null) {
      for (PartName there : before.now().parts().keySet()) {
        // A case has one scan of a jaw; what was kept before the jaw was told is kept under it.
        boolean replaced = there.jaw() == jaw || there.jaw() == Jaw.UNKNOWN;
        boolean mine = there.kind() == PartKind.SCAN || BenchWork.is(there);
        if (replaced && mine && !there.equals(scanName)) {
          edit = edit.drop(there);
        }
      }
    }
    if (before == null || !scan.part().equals(before.now().parts().get(scanName))) {
      edit = edit.put(scanName, scan.content());
    }
    Map<CaseSaid.What, byte[]> said = said(id, body);
    ObjectNode bench = BenchWork.begun(scan.unit());
    ObjectNode with = bench.putObject(WITH);
    said.forEach((what, content) -> with.put(word(what), Part.of(content).hash()));
    bench.set("bench", body.get("bench"));
    edit = edit.put(BenchWork.name(jaw), CaseSaid.bytes(bench));
    for (Map.Entry<CaseSaid.What, byte[]> part : said.entrySet()) {
      edit = edit.put(part.getKey().of(jaw), part.getValue());
    }
    return CaseOpposing.edit(edit, before, jaw, shelf.opposingFiles(id));
  }

  /**
   * Lays the opposing scan of a case over its cast again; what keeps it from lying there is told
   * and takes nothing out of the case.
   */
  private @Nullable Refusal lay(String id, OpenedCast cast, CaseOpposing kept) {
    shelf.setOpposingFiles(id, kept);
    try {
      String other = shelf.opened(kept.opposing());
      CaseOpposing.ScanFile both = kept.bite();
      String bite = both == null ? null : shelf.opened(both);
      OpposingScan scan =
          OpposingScan.of(
              cast, shelf.get(other), bite == null ? null : shelf.get(bite).cast(), Watch.NONE);
      shelf.setOpposing(id, cast, new LaidOpposing(other, bite, scan));
      return null;
    } catch (Refusal refused) {
      return refused;
    }
  }

  /** What the bench says in the form that the command line reads. */
  private Map<CaseSaid.What, byte[]> said(String id, JsonNode body) {
    Map<CaseSaid.What, byte[]> said = new EnumMap<>(CaseSaid.What.class);
    if (body.path("choices").isObject()) {
      ChoicesReader.of(body.get("choices"), "the request");
      said.put(CaseSaid.What.CHOICES, CaseSaid.bytes(body.get("choices")));
    }
    if (body.path("answers").isObject()) {
      AnswerReader.of(body.get("answers"));
      said.put(CaseSaid.What.ANSWERS, CaseSaid.bytes(body.get("answers")));
    }
    if (body.hasNonNull("tilt")) {
      said.put(CaseSaid.What.PATH, path(id, Requests.tilt(body)));
    }
    shelf
        .teeth(id)
        .ifPresent(t -> said.put(CaseSaid.What.CHART, CaseSaid.bytes(ChartJson.of(t.chart()))));
    return said;
  }

  private byte[] path(String id, Tilt tilt) {
    OpenedCast cast = shelf.get(id);
    return CaseSaid.bytes(
        CaseSaid.path(tilt, cast.finding() == null ? null : tilt.axis(cast.frame())));
  }

  /**
   * What the command line put into the case since the bench saved it last, or before it ever did.
   */
  private static ObjectNode news(CaseStore store, CaseFile file, Jaw jaw, JsonNode bench) {
    // A part that cannot be used is refused here, before anything is opened.
    CaseSaid.of(store, file, jaw);
    ObjectNode json = Json.object();
    for (CaseSaid.What what : CaseSaid.What.values()) {
      Part part = file.now().parts().get(what.of(jaw));
      if (part != null && !part.hash().equals(bench.path(WITH).path(word(what)).asText())) {
        json.set(word(what), CaseSaid.part(store, file, what, jaw));
      }
    }
    return json;
  }

  private static String word(CaseSaid.What what) {
    return what.name().toLowerCase(Locale.ROOT);
  }

  private void open(Context request) {
    CaseStore store = store();
    CaseFile file = store.get(new CaseCode(request.pathParam("code")));
    String named = request.queryParam("jaw");
    Jaw wanted = named == null ? Jaw.UNKNOWN : CastOptions.jawNamed(named).orElse(Jaw.UNKNOWN);
    CaseCast one = CaseCast.of(store, file, wanted);
    BenchWork work = BenchWork.of(store, file, one.jaw());
    JsonNode bench = work.json();
    ObjectNode news = news(store, file, one.jaw(), bench);
    String name = one.scan().getKey().label();
    Rulebook book = CaseCast.rulebook(store, file);
    shelf.checkRoom();
    OpenedCast cast =
        OpenCast.of(
            one.content(), name, new CastOptions(one.jaw(), work.hints(), work.unit()), Watch.NONE);
    String id = shelf.add(cast, Scan.of(name, one.content(), work.unit()), book);
    OpenedCast laidUnder = shelf.get(id);
    Refusal apart =
        CaseOpposing.of(store, file, one.jaw()).map(kept -> lay(id, laidUnder, kept)).orElse(null);
    ObjectNode json = standing(file);
    json.set("opposingProblem", Json.orNull(Problems.json(apart)));
    json.set("rulebook", Json.object().put("title", book.title()).put("hash", book.hash()));
    json.set("cast", CastJson.info(id, shelf));
    json.set("news", news);
    json.set("bench", bench.path("bench").isObject() ? bench.get("bench") : null);
    answer(request, json);
  }

  /** How a case stands. */
  static ObjectNode standing(CaseFile file) {
    return Json.object()
        .put("code", file.code().text())
        .put("revision", file.now().number())
        .put("savedAt", file.now().at().toString());
  }

  private static JsonNode body(Context request) throws IOException {
    try (InputStream in = request.req().getInputStream()) {
      byte[] content = in.readNBytes(MOST_BYTES + 1);
      if (content.length > MOST_BYTES) {
        throw AppRefusal.UPLOAD_TOO_BIG.with("The work on the bench", MOST_BYTES >> 20);
      }
      return json(content);
    }
  }

  private static JsonNode json(byte[] content) {
    try {
      return Json.read(new String(content, StandardCharsets.UTF_8));
    } catch (JsonProcessingException broken) {
      throw AppRefusal.REQUEST_UNREADABLE.with(
          "it is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  private static void answer(Context request, ObjectNode json) {
    request.contentType("application/json");
    request.result(Json.compact(json));
  }
}
