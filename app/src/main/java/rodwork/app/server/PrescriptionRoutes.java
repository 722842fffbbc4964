package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.WritePrescription;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.FolderZip;
import rodwork.app.report.Json;
import rodwork.app.report.PrescriptionFolder;
import rodwork.casework.prescription.Order;
import rodwork.casework.prescription.Paper;
import rodwork.casework.prescription.Prescription;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.casework.store.StoreProblem;
import rodwork.geometry.Watch;

/** The prescription of what lies on the bench, to look at and to hand over: docs/protocol.md. */
final class PrescriptionRoutes {
  private final Shelf shelf;
  private final CaseRoutes cases;

  PrescriptionRoutes(Shelf shelf, CaseRoutes cases) {
    this.shelf = shelf;
    this.cases = cases;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/prescription/pages", request -> write(request, false));
    routes.post("/api/casts/{id}/prescription/folder", request -> write(request, true));
  }

  /** What the laboratory gets: to look at, or as a folder that a case keeps the documents of. */
  private void write(Context request, boolean handOver) throws IOException {
    String id = request.pathParam("id");
    JsonNode body = Requests.json(request);
    CastTeeth teeth = shelf.known(id, AppRefusal.PLAN_NEEDS_TEETH);
    Scan scan = shelf.scan(id);
    Jaw jaw = teeth.arch().frame().jaw();
    CaseFile file = file(body);
    WritePrescription.Written written =
        WritePrescription.of(
            teeth,
            new JudgeAbutments.Wanted(
                    Requests.path(body),
                    new TreeSet<>(),
                    null,
                    AnswerReader.of(body.path("answers")))
                .with(shelf.opposingScan(id)),
            ChoicesReader.of(body.path("choices"), "the request"),
            shelf.rulebook(id),
            new WritePrescription.Ask(
                file == null ? scan.name() : file.code().text(),
                LocalDate.now(ZoneId.systemDefault()),
                body.path("order").isObject()
                    ? Order.read(Json.compact(body.get("order")), "The order")
                    : Order.BLANK,
                scan.name(),
                scan.part().hash(),
                before(file, jaw)),
            Watch.NONE);
    Paper paper = body.path("paper").asText().equals("letter") ? Paper.LETTER : Paper.A4;
    Notation notation = notation(body);
    Path folder = Files.createTempDirectory("rodwork");
    try {
      PrescriptionFolder.Documents made =
          PrescriptionFolder.write(
              folder, written, scan.name(), scan.part().hash(), paper, notation, Watch.NONE);
      if (handOver) {
        if (file != null) {
          file =
              cases
                  .store()
                  .change(
                      file,
                      "prescription",
                      CaseEdit.NONE
                          .put(document(jaw, PrescriptionFolder.JSON), made.json())
                          .put(document(jaw, PrescriptionFolder.PDF), made.pdf()));
          request.header("Case-Revision", String.valueOf(file.now().number()));
        }
        request.contentType("application/zip");
        request.result(FolderZip.of(folder));
      } else {
        request.contentType("application/pdf");
        request.result(made.pdf());
      }
    } finally {
      FolderZip.delete(folder);
    }
  }

  /** How the pages number teeth. */
  private static Notation notation(JsonNode body) {
    if (!body.hasNonNull("notation")) {
      return Notation.FDI;
    }
    String named = body.get("notation").asText();
    for (Notation notation : Notation.values()) {
      if (notation.name().equalsIgnoreCase(named)) {
        return notation;
      }
    }
    throw Requests.unreadable("notation is \"" + named + "\", not FDI, Universal or Palmer");
  }

  /** The case that the work is kept in, as it stands; null where it is kept in none. */
  private @Nullable CaseFile file(JsonNode body) {
    if (!body.hasNonNull("case")) {
      return null;
    }
    CaseFile file = cases.store().get(new CaseCode(body.get("case").path("code").asText()));
    int on = body.get("case").path("revision").asInt();
    if (file.now().number() != on) {
      throw StoreProblem.CASE_CHANGED.with(file.code(), file.now().number(), on);
    }
    return file;
  }

  private @Nullable Prescription before(@Nullable CaseFile file, Jaw jaw) {
    Part part =
        file == null ? null : file.now().parts().get(document(jaw, PrescriptionFolder.JSON));
    return part == null
        ? null
        : Prescription.read(
            new String(cases.store().read(part), StandardCharsets.UTF_8), "the case");
  }

  private static PartName document(Jaw jaw, String label) {
    return new PartName(PartKind.DOCUMENT, jaw, label);
  }
}
