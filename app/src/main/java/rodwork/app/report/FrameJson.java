package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.FrameFinding;

/** The arch frame as JSON, in the scan frame. */
public final class FrameJson {
  private FrameJson() {}

  public static ObjectNode of(FrameFinding finding) {
    ArchFrame frame = finding.frame();
    ObjectNode json = Json.object();
    json.set("origin", Json.point(frame.origin()));
    json.set("x", Json.direction(frame.x()));
    json.set("y", Json.direction(frame.y()));
    json.set("z", Json.direction(frame.z()));
    Json.put(json, "upUncertaintyDeg", frame.upUncertaintyDeg());
    Json.put(json, "frontUncertaintyDeg", frame.frontUncertaintyDeg());
    json.put("confident", finding.confident());
    return json;
  }
}
