package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.Abutments;
import rodwork.design.course.ArmShape;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;

/**
 * Reads retentive arms that were shaped by hand: {@code {"34
 * distal":{"family":"i-bar","pulls":[{"at":1,"to":[x,y,z]}]}}}.
 */
public final class ArmsReader {
  private final Function<String, Refusal> wrong;

  private ArmsReader(Function<String, Refusal> wrong) {
    this.wrong = wrong;
  }

  /**
   * The arms; none where there is no such object.
   *
   * @param wrong makes the refusal of what cannot be used
   */
  public static Map<Abutments.ArmKey, ArmShape> of(JsonNode json, Function<String, Refusal> wrong) {
    return new ArmsReader(wrong).arms(json);
  }

  private Map<Abutments.ArmKey, ArmShape> arms(JsonNode json) {
    Map<Abutments.ArmKey, ArmShape> arms = new HashMap<>();
    for (Map.Entry<String, JsonNode> row : json.properties()) {
      JsonNode arm = row.getValue();
      if (!arm.path("family").isTextual() || !arm.path("pulls").isArray() || arm.size() != 2) {
        throw wrong.apply(
            "an arm of "
                + row.getKey()
                + " has a family and pulls, such as"
                + " {\"family\": \"i-bar\", \"pulls\": [{\"at\": 1, \"to\": [0, 0, 0]}]}, not "
                + arm);
      }
      List<ArmShape.Pull> pulls = new ArrayList<>();
      for (JsonNode pull : arm.path("pulls")) {
        double at = pull.path("at").asDouble(Double.NaN);
        if (!(at >= 0 && at <= 1)) {
          throw wrong.apply("at is a share of the arm from 0 to 1, not " + pull.path("at"));
        }
        pulls.add(new ArmShape.Pull(at, point(pull.path("to"))));
      }
      arms.put(key(row.getKey(), arm.path("family").asText()), new ArmShape(pulls));
    }
    return arms;
  }

  private Abutments.ArmKey key(String row, String family) {
    if (!row.matches("[1-4][1-8] (mesial|distal)")) {
      throw wrong.apply("\"" + row + "\" is no row, such as \"34 distal\"");
    }
    return new Abutments.ArmKey(
        ToothNumber.of(Integer.parseInt(row.substring(0, 2))),
        row.endsWith("mesial") ? Surface.MESIAL : Surface.DISTAL,
        family);
  }

  private Vec3 point(JsonNode node) {
    Vec3 p =
        new Vec3(
            node.path(0).asDouble(Double.NaN),
            node.path(1).asDouble(Double.NaN),
            node.path(2).asDouble(Double.NaN));
    if (node.size() != 3 || !p.isFinite()) {
      throw wrong.apply("an arm is pulled to three numbers [mm], not " + node);
    }
    return p;
  }
}
