package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.rules.Wording;

/** The few words of JSON that all reports share. */
public final class Json {
  /** Lengths, areas, angles are rounded to this: a tenth of a micrometre. */
  private static final double PER_UNIT = 1e4;

  /** Directions need more digits: 1e-9 of a unit vector is 0.00000006 degrees. */
  private static final double PER_DIRECTION = 1e9;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Json() {}

  public static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  public static ArrayNode array() {
    return JsonNodeFactory.instance.arrayNode();
  }

  /** Puts a measured number, rounded; null where it is not known (NaN). */
  public static void put(ObjectNode object, String name, double value) {
    if (Double.isFinite(value)) {
      object.put(name, rounded(value, PER_UNIT));
    } else {
      object.putNull(name);
    }
  }

  /** A point [mm], rounded. */
  public static ArrayNode point(Vec3 p) {
    return triple(p, PER_UNIT);
  }

  /** A unit vector. */
  public static ArrayNode direction(Vec3 d) {
    return triple(d, PER_DIRECTION);
  }

  /** Points as an array of triples [mm]. */
  public static ArrayNode points(List<Vec3> points) {
    ArrayNode array = array();
    points.forEach(p -> array.add(point(p)));
    return array;
  }

  /** Lines of text. */
  public static ArrayNode texts(List<String> texts) {
    ArrayNode array = array();
    texts.forEach(array::add);
    return array;
  }

  /** Words with FDI numbers, one text each. */
  public static ArrayNode wordings(Collection<Wording> all) {
    ArrayNode array = array();
    all.forEach(one -> array.add(one.fdi()));
    return array;
  }

  /** Words in pieces, for who shows tooth numbers otherwise: texts, and teeth by FDI number. */
  public static ArrayNode pieces(Wording wording) {
    ArrayNode array = array();
    for (Wording.Piece piece : wording.pieces()) {
      switch (piece) {
        case Wording.Piece.Plain(String words) -> array.add(words);
        case Wording.Piece.Tooth(int fdi) -> array.add(fdi);
        case Wording.Piece.Fdi(String words) -> array.add(words);
      }
    }
    return array;
  }

  /** The same, a list of pieces for each. */
  public static ArrayNode allPieces(Collection<Wording> all) {
    ArrayNode array = array();
    all.forEach(one -> array.add(pieces(one)));
    return array;
  }

  /** The node, or null as JSON says it. */
  public static JsonNode orNull(@Nullable JsonNode node) {
    return node == null ? JsonNodeFactory.instance.nullNode() : node;
  }

  /** As text, for a person: one entry a line. */
  public static String pretty(JsonNode node) {
    return node.toPrettyString();
  }

  /** As text, for a program. */
  public static String compact(JsonNode node) {
    return node.toString();
  }

  /**
   * Reads a text.
   *
   * @throws JsonProcessingException if it is no JSON
   */
  public static JsonNode read(String text) throws JsonProcessingException {
    return MAPPER.readTree(text);
  }

  private static ArrayNode triple(Vec3 v, double perUnit) {
    return array()
        .add(rounded(v.x(), perUnit))
        .add(rounded(v.y(), perUnit))
        .add(rounded(v.z(), perUnit));
  }

  private static double rounded(double value, double perUnit) {
    double scaled = value * perUnit;
    return Math.abs(scaled) < 1L << 53 ? Math.rint(scaled) / perUnit + 0.0 : value;
  }
}
