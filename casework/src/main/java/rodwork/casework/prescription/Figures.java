package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import rodwork.geometry.Vec3;

/**
 * Numbers as they stand in the JSON, rounded to the digits that the paper shows: so that both say
 * the same.
 */
final class Figures {
  /** Lengths [mm]: a hundredth, well below the accuracy of a scan. */
  static final int MM = 2;

  static final int DEG = 1;

  /** Lengths that are set with dividers [mm]. */
  static final int DIVIDERS = 1;

  /** Areas [mm²]. */
  static final int AREA = 1;

  /** Of directions and of the matrix: 1e-6 moves a point 50 mm away by 0.05 µm. */
  static final int DIRECTION = 6;

  private Figures() {}

  static void put(ObjectNode json, String name, double value, int digits) {
    if (Double.isFinite(value)) {
      json.put(name, rounded(value, digits));
    } else {
      json.putNull(name);
    }
  }

  static ArrayNode triple(Vec3 v, int digits) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    json.add(rounded(v.x(), digits)).add(rounded(v.y(), digits)).add(rounded(v.z(), digits));
    return json;
  }

  static double rounded(double value, int digits) {
    double scale = Math.pow(10, digits);
    return Math.rint(value * scale) / scale + 0.0;
  }

  /** The number as it is printed; a dash where there is none. */
  static String text(JsonNode number, int digits) {
    return number.isNumber()
        ? String.format(Locale.ROOT, "%." + digits + "f", number.asDouble())
        : "–";
  }
}
