package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.kennedy.ToothRun;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.anatomy.tooth.Neighbour;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.operation.CastTeeth;

/** The teeth of a cast as JSON: docs/schema/teeth.schema.json. */
public final class TeethJson {
  private static final int FORMAT_VERSION = 1;

  private TeethJson() {}

  /** Everything that was found. */
  public static ObjectNode of(CastTeeth found) {
    Dentition dentition = found.dentition();
    ObjectNode json = Json.object();
    json.put("format", "rodwork teeth");
    json.put("version", FORMAT_VERSION);
    json.put("jaw", Words.jaw(dentition.chart().jaw()));
    ArrayNode teeth = json.putArray("teeth");
    for (Tooth tooth : dentition.inOrder()) {
      Double sure = found.finding().certainty().get(tooth.number().fdi());
      teeth.add(tooth(tooth, sure == null ? Double.NaN : sure, dentition));
    }
    ArrayNode spaces = json.putArray("spaces");
    dentition.spaces().forEach(space -> spaces.add(space(space)));
    json.set("kennedy", kennedy(dentition.kennedy()));
    json.set("remarks", Json.wordings(dentition.remarks()));
    json.set("warnings", warnings(found.finding()));
    return json;
  }

  /** What a person should look at before trusting labels and numbers, each with its code. */
  public static ArrayNode warnings(ToothFinding finding) {
    ArrayNode array = Json.array();
    for (ToothFinding.Remark remark : finding.remarks()) {
      ObjectNode one = array.addObject().put("code", remark.code());
      one.put("message", remark.text().fdi()).put("advice", remark.advice());
      one.set("pieces", Json.pieces(remark.text()));
    }
    return array;
  }

  private static ObjectNode tooth(Tooth tooth, double certainty, Dentition dentition) {
    ObjectNode json = Json.object();
    json.put("tooth", tooth.number().fdi());
    json.put("stands", dentition.standing().contains(tooth.number()));
    Json.put(json, "certainty", certainty);
    Json.put(json, "areaMm2", tooth.areaMm2());
    json.set("centroid", Json.point(tooth.centroid()));
    ObjectNode margin = json.putObject("margin");
    Json.put(margin, "lengthMm", tooth.margin().lengthMm());
    Json.put(margin, "seenShare", tooth.margin().seenShare());
    margin.set("points", Json.points(tooth.margin().points()));
    ArrayNode kinds = margin.putArray("kinds");
    tooth.margin().kinds().forEach(kind -> kinds.add(ChartJson.word(kind)));
    ObjectNode axes = json.putObject("axes");
    axes.set("origin", Json.point(tooth.axes().origin()));
    axes.set("mesial", Json.direction(tooth.axes().mesial()));
    axes.set("facial", Json.direction(tooth.axes().facial()));
    axes.set("axis", Json.direction(tooth.axes().axis()));
    ObjectNode size = json.putObject("size");
    Json.put(size, "facialHeightMm", tooth.size().facialHeightMm());
    Json.put(size, "lingualHeightMm", tooth.size().lingualHeightMm());
    Json.put(size, "mesiodistalMm", tooth.size().mesiodistalMm());
    Json.put(size, "faciolingualMm", tooth.size().faciolingualMm());
    json.set("mesialNeighbour", Json.orNull(neighbour(tooth.mesialNeighbour())));
    json.set("distalNeighbour", Json.orNull(neighbour(tooth.distalNeighbour())));
    return json;
  }

  private static @Nullable ObjectNode neighbour(Optional<Neighbour> neighbour) {
    if (neighbour.isEmpty()) {
      return null;
    }
    Neighbour next = neighbour.get();
    ObjectNode json = Json.object();
    json.put("tooth", next.number().fdi());
    json.put("touches", next.touches());
    Json.put(json, "gapMm", next.gapMm());
    json.set("at", Json.point(next.at()));
    return json;
  }

  private static ObjectNode space(Space space) {
    ObjectNode json = Json.object();
    json.set("missing", numbers(space.missing()));
    json.put("kind", space.bounded() ? "bounded" : "free end");
    json.put("closed", space.closed());
    json.set("right", number(space.right()));
    json.set("left", number(space.left()));
    Json.put(json, "lengthMm", space.lengthMm());
    json.set("crest", Json.points(space.crest()));
    ArrayNode positions = json.putArray("positions");
    for (Space.Position position : space.positions()) {
      ObjectNode one = positions.addObject();
      one.put("tooth", position.tooth().fdi());
      one.set("at", Json.point(position.at()));
    }
    return json;
  }

  /** The class with its reasons and questions. */
  public static ObjectNode kennedy(KennedyFinding found) {
    ObjectNode json = Json.object();
    json.put("title", found.title());
    json.put("kind", ChartJson.word(found.kind()));
    json.put("class", found.kennedy().map(Enum::name).orElse(null));
    json.put("modifications", found.modifications());
    json.set("spaces", runs(found.spaces()));
    json.set("deciding", runs(found.deciding()));
    json.set("leftOut", numbers(found.leftOut()));
    ArrayNode reasons = json.putArray("reasons");
    for (KennedyFinding.Reason reason : found.reasons()) {
      reasons
          .addObject()
          .put("rule", reason.rule().number())
          .put("says", reason.rule().text())
          .put("here", reason.text().fdi());
    }
    ArrayNode questions = json.putArray("questions");
    for (KennedyFinding.Question question : found.questions()) {
      questions
          .addObject()
          .put("about", ChartJson.word(question.ask()))
          .put("tooth", question.tooth().fdi())
          .put("text", question.text().fdi())
          .put("assumed", question.assumed())
          .put("otherwise", question.otherwise());
    }
    return json;
  }

  private static ArrayNode runs(Collection<ToothRun> runs) {
    ArrayNode array = Json.array();
    runs.forEach(run -> array.add(numbers(run.missing())));
    return array;
  }

  private static ArrayNode numbers(Collection<ToothNumber> teeth) {
    ArrayNode array = Json.array();
    teeth.forEach(tooth -> array.add(tooth.fdi()));
    return array;
  }

  private static JsonNode number(Optional<ToothNumber> tooth) {
    return tooth.isPresent() ? IntNode.valueOf(tooth.get().fdi()) : NullNode.getInstance();
  }
}
