package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;
import rodwork.survey.tripod.Landmark;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;
import rodwork.survey.tripod.TripodRules;

/** Tripod marks as JSON; the schema is {@code docs/schema/tripod.schema.json}. */
public final class TripodJson {
  public static final String FORMAT = "rodwork tripod";

  private TripodJson() {}

  /**
   * The marks of a tripod.
   *
   * @param bearings one a mark, as {@link MarkBearings} finds them
   */
  public static ObjectNode of(
      Tripod tripod,
      @Nullable Tilt tilt,
      List<Optional<MarkBearings>> bearings,
      TripodRules rules) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.set("axis", Json.direction(tripod.axis()));
    json.set("tilt", Json.orNull(tiltOrNull(tilt)));
    Json.put(json, "heightMm", tripod.heightMm());
    ArrayNode marks = json.putArray("marks");
    for (int i = 0; i < tripod.marks().size(); i++) {
      TripodMark mark = tripod.marks().get(i);
      ObjectNode one = marks.addObject();
      one.set("point", Json.point(mark.point()));
      one.put("triangle", mark.triangle());
      Json.put(one, "slopeDeg", mark.slopeDeg());
      one.set("bearings", Json.orNull(bearings.get(i).map(TripodJson::bearings).orElse(null)));
    }
    ArrayNode distances = json.putArray("distancesMm");
    for (double d : tripod.distancesMm()) {
      distances.add(Math.rint(d * 1e4) / 1e4);
    }
    Json.put(json, "axisErrorDeg", tripod.axisErrorDeg(rules.picking().value()));
    Json.put(json, "pickingErrorMm", rules.picking().value());
    return json;
  }

  private static ObjectNode bearings(MarkBearings mark) {
    ObjectNode json = Json.object();
    ArrayNode from = json.putArray("from");
    for (MarkBearings.Bearing bearing : mark.both()) {
      Landmark landmark = bearing.landmark();
      ObjectNode one = from.addObject();
      one.put("landmark", landmark.kind().word());
      one.put("tooth", landmark.tooth().fdi());
      one.put("other", landmark.other().map(ToothNumber::fdi).orElse(null));
      one.set("point", Json.point(landmark.point()));
      Json.put(one, "distanceMm", bearing.distanceMm());
    }
    Json.put(json, "errorMm", mark.errorMm());
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
