package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import rodwork.app.operation.MakePlan;
import rodwork.app.report.Json;
import rodwork.design.cut.PreparedCast;
import rodwork.design.preparation.CutContours;
import rodwork.design.preparation.Step;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** How the cuts of a mouth preparation look, on the cast and in section: docs/protocol.md. */
final class CutsJson {
  private static final double PER_MM = 1000;

  private CutsJson() {}

  static ArrayNode of(MakePlan.Planned planned) {
    TriangleMesh mesh = planned.judged().teeth().arch().mesh();
    ArrayNode json = Json.array();
    for (Step step : planned.preparation().steps()) {
      if (step.cut().isEmpty() || step.section().isEmpty()) {
        continue;
      }
      ObjectNode one = json.addObject().put("step", step.number());
      ArrayNode contours = one.putArray("contours");
      for (CutContours.Contour c : CutContours.of(mesh, step.cut().get())) {
        ObjectNode contour = contours.addObject();
        Json.put(contour, "depthMm", c.depthMm());
        ArrayNode pieces = contour.putArray("pieces");
        for (CutContours.Piece p : c.pieces()) {
          add(pieces, p.from());
          add(pieces, p.to());
        }
      }
      PreparedCast.Before section = step.section().get();
      one.set("before", pieces(section.before()));
      one.set("after", pieces(section.after()));
    }
    return json;
  }

  private static ArrayNode pieces(List<PreparedCast.Piece> pieces) {
    ArrayNode json = Json.array();
    for (PreparedCast.Piece p : pieces) {
      json.add(rounded(p.out())).add(rounded(p.up())).add(rounded(p.out2())).add(rounded(p.up2()));
    }
    return json;
  }

  private static void add(ArrayNode json, Vec3 p) {
    json.add(rounded(p.x())).add(rounded(p.y())).add(rounded(p.z()));
  }

  private static double rounded(double mm) {
    return Math.rint(mm * PER_MM) / PER_MM;
  }
}
