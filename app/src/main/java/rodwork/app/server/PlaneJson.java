package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.occlusion.TeethPlane;
import rodwork.app.report.Json;
import rodwork.survey.Tilt;

/** An occlusal plane as the bench is offered it: {@code PlaneOffer}. */
final class PlaneJson {
  private PlaneJson() {}

  static ObjectNode of(TeethPlane plane, ArchFrame now, int teeth) {
    ObjectNode json = Json.object();
    json.set("up", Json.direction(plane.frame().z()));
    json.set("front", Json.direction(plane.frame().y()));
    Tilt turn = Tilt.of(plane.frame().z(), now);
    Json.put(json, "anteriorDeg", turn.anteriorDeg());
    Json.put(json, "rightDeg", turn.rightDeg());
    Json.put(json, "anteriorErrorDeg", plane.anteriorDeg());
    Json.put(json, "rightErrorDeg", plane.rightDeg());
    json.put("teeth", teeth);
    json.put(
        "used",
        plane.tips().stream()
            .filter(TeethPlane.Tip::used)
            .map(TeethPlane.Tip::tooth)
            .distinct()
            .count());
    json.put("ask", plane.ask());
    return json;
  }
}
