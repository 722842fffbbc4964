package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import rodwork.geometry.intake.IntakeReport;
import rodwork.geometry.intake.Remark;
import rodwork.geometry.intake.UnitFinding;
import rodwork.geometry.io.LengthUnit;

/** The intake report as JSON: docs/schema/intake.schema.json. */
public final class IntakeJson {
  private IntakeJson() {}

  public static ObjectNode of(IntakeReport report) {
    ObjectNode json = Json.object();
    json.put("file", report.file());
    json.put("format", report.format());
    json.set("inFile", counts(report.inFile()));
    json.set("kept", counts(report.kept()));
    ObjectNode box = json.putObject("boxMm");
    box.set("low", Json.point(report.low()));
    box.set("high", Json.point(report.high()));
    json.set("unit", unit(report.unit()));
    ObjectNode edges = json.putObject("edges");
    Json.put(edges, "medianMm", report.edges().medianMm());
    Json.put(edges, "p95Mm", report.edges().p95Mm());
    edges.put("nearTeeth", report.edges().nearTeeth());
    json.set("surface", surface(report.surface()));
    ArrayNode loops = json.putArray("boundaryLoops");
    for (IntakeReport.Loop loop : report.loops()) {
      ObjectNode one = loops.addObject();
      one.put("kind", word(loop.kind()));
      one.put("edges", loop.edges());
      Json.put(one, "lengthMm", loop.lengthMm());
      one.set("middle", Json.point(loop.middle()));
    }
    ArrayNode remarks = json.putArray("remarks");
    for (Remark remark : report.remarks()) {
      remarks
          .addObject()
          .put("code", remark.code())
          .put("outcome", word(remark.outcome()))
          .put("count", remark.count())
          .put("line", remark.line());
    }
    return json;
  }

  private static ObjectNode counts(IntakeReport.Counts counts) {
    return Json.object().put("vertices", counts.vertices()).put("triangles", counts.triangles());
  }

  private static ObjectNode unit(UnitFinding finding) {
    ObjectNode json = Json.object();
    json.put("taken", finding.unit().label());
    json.put("evidence", word(finding.evidence()));
    LengthUnit declared = finding.declared();
    json.put("declared", declared == null ? null : declared.label());
    Json.put(json, "spanInFileUnit", finding.spanInFileUnit());
    Json.put(json, "spanMm", finding.spanMm());
    return json;
  }

  private static ObjectNode surface(IntakeReport.Surface surface) {
    ObjectNode json = Json.object();
    json.put("watertight", surface.watertight());
    json.put("pieces", surface.pieces());
    Json.put(json, "areaMm2", surface.areaMm2());
    Double volume = surface.volumeMm3();
    Json.put(json, "volumeMm3", volume == null ? Double.NaN : volume);
    return json;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
