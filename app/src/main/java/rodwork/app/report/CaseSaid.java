package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.app.AppRefusal;
import rodwork.app.operation.WantedPath;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;

/**
 * What a case keeps of one jaw beside its scan. Command line and bench read and write the same
 * parts: docs/case-store.md.
 *
 * @param chart null: none
 * @param path that was chosen; null: none, so the reference orientation
 * @param choices what was chosen against the proposal
 * @param answers what only the mouth tells
 */
public record CaseSaid(
    @Nullable Chart chart, @Nullable WantedPath path, Choices choices, Answers answers) {
  private static final String PATH_FORMAT = "rodwork chosen path";

  /** The parts. */
  public enum What {
    CHART(PartKind.CHART, "chart.json"),
    PATH(PartKind.PATH, "path.json"),
    CHOICES(PartKind.CHOICES, "choices.json"),
    ANSWERS(PartKind.DOCUMENT, "answers.json");

    private final PartKind kind;
    private final String label;

    What(PartKind kind, String label) {
      this.kind = kind;
      this.label = label;
    }

    public PartName of(Jaw jaw) {
      return new PartName(kind, jaw, label);
    }
  }

  /**
   * All that is kept of a jaw.
   *
   * @throws rodwork.geometry.Refusal if a part cannot be used
   */
  public static CaseSaid of(CaseStore store, CaseFile file, Jaw jaw) {
    JsonNode chart = part(store, file, What.CHART, jaw);
    JsonNode path = part(store, file, What.PATH, jaw);
    JsonNode choices = part(store, file, What.CHOICES, jaw);
    JsonNode answers = part(store, file, What.ANSWERS, jaw);
    return new CaseSaid(
        chart == null ? null : ChartReader.read(Json.compact(chart), name(file, What.CHART)),
        path == null ? null : path(path, name(file, What.PATH)),
        choices == null ? Choices.NONE : ChoicesReader.of(choices, name(file, What.CHOICES)),
        answers == null ? Answers.NONE : AnswerReader.of(answers));
  }

  /** A part as JSON; null where the case has none. */
  public static @Nullable JsonNode part(CaseStore store, CaseFile file, What what, Jaw jaw) {
    Part part = file.now().parts().get(what.of(jaw));
    if (part == null) {
      return null;
    }
    try {
      return Json.read(new String(store.read(part), StandardCharsets.UTF_8));
    } catch (JsonProcessingException broken) {
      throw AppRefusal.JSON_WRONG.with(
          name(file, what), "it is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  /**
   * A chosen path as it is kept.
   *
   * @param axis the same in the scan frame, which holds whatever the arch frame is found to be;
   *     null: not known
   */
  public static ObjectNode path(Tilt tilt, @Nullable Vec3 axis) {
    ObjectNode json = Json.object().put("format", PATH_FORMAT).put("version", 1);
    ArrayNode angles = json.putArray("tilt");
    angles.add(tilt.anteriorDeg()).add(tilt.rightDeg());
    if (axis != null) {
      json.set("axis", Json.direction(axis));
    }
    return json;
  }

  private static WantedPath path(JsonNode path, String name) {
    if (path.has("axis")) {
      return new WantedPath.AlongAxis(JsonTriples.triple(path.get("axis"), name, "\"axis\""));
    }
    JsonNode tilt = path.path("tilt");
    if (!tilt.isArray() || tilt.size() != 2 || !tilt.get(0).isNumber() || !tilt.get(1).isNumber()) {
      throw AppRefusal.JSON_WRONG.with(
          name, "\"tilt\" is not two angles, anterior and right, in degrees");
    }
    return new WantedPath.AtTilt(new Tilt(tilt.get(0).asDouble(), tilt.get(1).asDouble()));
  }

  /** The bytes that are kept of a part. */
  public static byte[] bytes(JsonNode json) {
    return (Json.pretty(json) + "\n").getBytes(StandardCharsets.UTF_8);
  }

  private static String name(CaseFile file, What what) {
    return what.label + " of case " + file.code();
  }
}
