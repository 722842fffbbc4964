package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Place;
import rodwork.rules.Range;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/** Readings, limits, places and findings as JSON; the schema is {@code rules.schema.json}. */
public final class RulesJson {
  private RulesJson() {}

  public static ObjectNode reading(Reading reading) {
    ObjectNode json = Json.object();
    switch (reading) {
      case Reading.Measured m -> {
        json.put("kind", "measured");
        Json.put(json, "value", m.value());
        Json.put(json, "uncertainty", m.uncertainty());
        json.put("unit", m.unit());
      }
      case Reading.AtLeast a -> {
        json.put("kind", "at-least");
        Json.put(json, "value", a.value());
        json.put("unit", a.unit());
      }
      case Reading.Word w -> json.put("kind", "word").put("word", w.word());
      case Reading.Said said -> json.put("kind", "said").put("yes", said.yes());
      case Reading.NoRoom _ -> json.put("kind", "no-room");
      case Reading.NotKnown _ -> json.put("kind", "not-known");
    }
    return json.put("words", reading.words());
  }

  static ObjectNode limit(Limit limit) {
    ObjectNode json = Json.object();
    switch (limit) {
      case Limit.Least least -> {
        json.put("kind", "at-least");
        Json.put(json, "value", least.value());
        json.put("unit", least.unit());
      }
      case Limit.Most most -> {
        json.put("kind", "at-most");
        Json.put(json, "value", most.value());
        json.put("unit", most.unit());
      }
      case Limit.OneOf one -> {
        json.put("kind", "one-of");
        json.set("choices", Json.texts(one.choices()));
      }
    }
    return json.put("words", limit.words());
  }

  static ObjectNode place(Place place) {
    ObjectNode json = Json.object().put("words", place.words());
    json.set("pieces", Json.pieces(place.wording()));
    json.set(
        "point",
        Json.orNull(
            place
                .spot()
                .map(s -> Json.point(new rodwork.geometry.Vec3(s.x(), s.y(), s.z())))
                .orElse(null)));
    return json;
  }

  static ObjectNode finding(Finding finding) {
    ObjectNode json = Json.object();
    json.put("rule", finding.rule());
    json.put("what", finding.what());
    json.set("place", place(finding.place()));
    json.set("reading", reading(finding.reading()));
    json.set("limit", limit(finding.limit()));
    json.put("verdict", finding.verdict().words());
    json.put("source", finding.source());
    json.put("standing", finding.standing().words());
    return json;
  }

  static ObjectNode threshold(Threshold threshold) {
    ObjectNode json = Json.object().put("rule", threshold.id());
    Json.put(json, "value", threshold.value());
    json.put("unit", threshold.unit());
    json.put("source", threshold.source());
    return json.put("standing", threshold.standing().words());
  }

  static ObjectNode range(Range range) {
    ObjectNode json = Json.object();
    Json.put(json, "from", range.from());
    Json.put(json, "to", range.to());
    return json;
  }
}
