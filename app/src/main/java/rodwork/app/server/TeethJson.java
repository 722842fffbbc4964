package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.report.Json;
import rodwork.app.report.Words;
import rodwork.geometry.Vec3;
import rodwork.survey.tooth.ToothMark;
import rodwork.survey.tooth.ToothSurvey;
import rodwork.survey.tooth.ZoneDepth;

/** What the bench is told of teeth: {@code TeethInfo} and {@code ToothDepths}. */
final class TeethJson {
  private TeethJson() {}

  static ObjectNode info(FoundTeeth found) {
    ObjectNode json = Json.object();
    json.put("jaw", Words.jaw(found.chart().jaw()));
    json.set("missing", numbers(found.chart().missing()));
    ArrayNode teeth = json.putArray("teeth");
    ArrayNode spaces = json.putArray("spaces");
    ArrayNode remarks = json.putArray("remarks");
    Dentition dentition = found.dentition();
    if (dentition != null) {
      Map<Integer, Double> certainty =
          found.finding() == null ? Map.of() : found.finding().certainty();
      for (Tooth tooth : dentition.inOrder()) {
        ObjectNode one = tooth(tooth, certainty.get(tooth.number().fdi()));
        one.set("on", Json.point(FoundTeeth.onTop(found.cast().mesh(), tooth)));
        teeth.add(one);
      }
      dentition.spaces().forEach(space -> spaces.add(space(space)));
      dentition.remarks().forEach(remark -> remarks.add(Json.pieces(remark)));
    }
    json.set(
        "warnings",
        found.finding() == null
            ? Json.array()
            : rodwork.app.report.TeethJson.warnings(found.finding()));
    json.set("problem", Json.orNull(Problems.json(found.problem())));
    json.set("kennedy", kennedy(found.kennedy()));
    return json;
  }

  private static ObjectNode tooth(Tooth tooth, @Nullable Double certainty) {
    ObjectNode json = Json.object();
    json.put("tooth", tooth.number().fdi());
    json.set("margin", Json.points(tooth.margin().points()));
    json.set("top", Json.point(top(tooth)));
    json.set("axis", Json.direction(tooth.axes().axis()));
    Json.put(json, "widthMm", tooth.size().mesiodistalMm());
    Json.put(json, "depthMm", tooth.size().faciolingualMm());
    Json.put(json, "facialHeightMm", tooth.size().facialHeightMm());
    Json.put(json, "lingualHeightMm", tooth.size().lingualHeightMm());
    Json.put(json, "certainty", certainty == null ? Double.NaN : certainty);
    return json;
  }

  /** Over the middle of the crown, at its height: where a number can stand. */
  private static Vec3 top(Tooth tooth) {
    double up = Math.max(tooth.size().facialHeightMm(), tooth.size().lingualHeightMm());
    return tooth.axes().toScan(new Vec3(0, 0, up));
  }

  private static ObjectNode space(Space space) {
    ObjectNode json = Json.object();
    json.set("missing", numbers(space.missing()));
    json.put("right", space.right().map(ToothNumber::fdi).orElse(null));
    json.put("left", space.left().map(ToothNumber::fdi).orElse(null));
    Json.put(json, "lengthMm", space.lengthMm());
    json.put("closed", space.closed());
    json.set("crest", Json.points(space.crest()));
    ArrayNode positions = json.putArray("positions");
    for (Space.Position position : space.positions()) {
      positions
          .addObject()
          .put("tooth", position.tooth().fdi())
          .set("at", Json.point(position.at()));
    }
    return json;
  }

  private static ObjectNode kennedy(KennedyFinding finding) {
    ObjectNode json = Json.object();
    json.put("title", finding.title());
    json.put("text", finding.kennedy().map(k -> k.text()).orElse(null));
    ArrayNode reasons = json.putArray("reasons");
    finding
        .reasons()
        .forEach(
            reason ->
                reasons
                    .addObject()
                    .put("rule", reason.rule().number())
                    .put("says", reason.rule().text())
                    .set("text", Json.pieces(reason.text())));
    ArrayNode questions = json.putArray("questions");
    finding
        .questions()
        .forEach(
            question -> {
              ObjectNode one = questions.addObject();
              one.put("asks", question.ask().name().toLowerCase(Locale.ROOT));
              one.set("places", numbers(question.places()));
              one.set("text", Json.pieces(question.text()));
              one.put("assumed", question.assumed());
              one.put("otherwise", question.otherwise());
            });
    return json;
  }

  /** One tooth at the path of the survey. */
  static ObjectNode depths(ToothSurvey survey) {
    ObjectNode json = Json.object();
    json.put("tooth", survey.tooth().number().fdi());
    ArrayNode zones = json.putArray("zones");
    for (ZoneDepth zone : survey.zones()) {
      ObjectNode one = zones.addObject();
      one.put("zone", zone.zone().label());
      Json.put(one, "hiddenMm", zone.hiddenMm());
      if (zone.deepest().isPresent()) {
        ZoneDepth.Deepest deepest = zone.deepest().get();
        one.put("triangle", deepest.triangle());
        Json.put(one, "fromMarginMm", deepest.fromMarginMm());
        Json.put(one, "overMarginMm", deepest.overMarginMm());
        one.set("reading", PlaceJson.reading(deepest.reading()));
      } else {
        one.putNull("reading");
      }
    }
    return json;
  }

  /** A mark that was asked for by place, or why there is none. */
  static void mark(ObjectNode json, ToothMark mark) {
    if (mark.place().isPresent()) {
      PlaceJson.place(json.putObject("place"), mark.place().get(), mark.gaugeMm());
      json.putNull("why");
    } else {
      json.putNull("place");
      json.put("why", mark.why());
    }
  }

  private static ArrayNode numbers(Collection<ToothNumber> numbers) {
    ArrayNode array = Json.array();
    numbers.forEach(number -> array.add(number.fdi()));
    return array;
  }
}
