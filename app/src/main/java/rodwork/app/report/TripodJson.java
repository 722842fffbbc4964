package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.app.AppRefusal;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;
import rodwork.survey.tripod.TripodRules;

/** Tripod marks as JSON; the schema is {@code docs/schema/tripod.schema.json}. */
public final class TripodJson {
  public static final String FORMAT = "rodwork tripod";

  private TripodJson() {}

  public static ObjectNode of(Tripod tripod, @Nullable Tilt tilt, TripodRules rules) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.set("axis", Json.direction(tripod.axis()));
    json.set("tilt", Json.orNull(tiltOrNull(tilt)));
    Json.put(json, "heightMm", tripod.heightMm());
    ArrayNode marks = json.putArray("marks");
    for (TripodMark mark : tripod.marks()) {
      ObjectNode one = marks.addObject();
      one.set("point", Json.point(mark.point()));
      one.put("triangle", mark.triangle());
      Json.put(one, "slopeDeg", mark.slopeDeg());
    }
    ArrayNode distances = json.putArray("distancesMm");
    for (double d : tripod.distancesMm()) {
      distances.add(Math.rint(d * 1e4) / 1e4);
    }
    Json.put(json, "axisErrorDeg", tripod.axisErrorDeg(rules.picking().value()));
    Json.put(json, "pickingErrorMm", rules.picking().value());
    return json;
  }

  /** A tilt with its total; null where there is none. */
  public static @Nullable ObjectNode tiltOrNull(@Nullable Tilt tilt) {
    if (tilt == null) {
      return null;
    }
    ObjectNode json = Json.object();
    Json.put(json, "anteriorDeg", tilt.anteriorDeg());
    Json.put(json, "rightDeg", tilt.rightDeg());
    Json.put(json, "totalDeg", tilt.totalDeg());
    return json;
  }

  /**
   * Reads kept marks back.
   *
   * @param name what messages call the file
   */
  public static Tripod read(JsonNode json, String name) {
    if (!FORMAT.equals(json.path("format").asText())) {
      throw AppRefusal.JSON_WRONG.with(name, "its \"format\" is not \"" + FORMAT + "\"");
    }
    Vec3 axis = JsonTriples.triple(json.path("axis"), name, "axis");
    if (!(axis.length() > 0)) {
      throw AppRefusal.JSON_WRONG.with(name, "\"axis\" has no direction");
    }
    List<TripodMark> marks = new ArrayList<>();
    for (JsonNode one : json.path("marks")) {
      double slope = one.path("slopeDeg").asDouble(Double.NaN);
      if (!(slope >= 0 && slope <= 90)) {
        throw AppRefusal.JSON_WRONG.with(
            name, "\"slopeDeg\" of mark " + (marks.size() + 1) + " is not from 0 to 90");
      }
      marks.add(
          new TripodMark(
              JsonTriples.triple(one.path("point"), name, "point of mark " + (marks.size() + 1)),
              one.path("triangle").asInt(-1),
              slope));
    }
    if (marks.size() != 3) {
      throw AppRefusal.JSON_WRONG.with(name, "it holds " + marks.size() + " marks, not 3");
    }
    Vec3 unit = axis.unit();
    return new Tripod(unit, marks.getFirst().point().dot(unit), marks);
  }
}
