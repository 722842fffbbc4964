package rodwork.casework.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.SortedMap;
import java.util.TreeMap;
import rodwork.anatomy.Jaw;

/** The parts of a state as JSON, in the database and in archives alike. */
final class PartsJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private PartsJson() {}

  static ArrayNode of(SortedMap<PartName, Part> parts) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    parts.forEach(
        (name, part) -> {
          ObjectNode one = json.addObject();
          one.put("kind", name.kind().word());
          one.put("jaw", word(name.jaw()));
          one.put("label", name.label());
          one.put("sha256", part.hash());
          one.put("size", part.size());
        });
    return json;
  }

  static SortedMap<PartName, Part> read(String text) {
    try {
      return read(MAPPER.readTree(text));
    } catch (JsonProcessingException wrong) {
      throw new IllegalArgumentException("parts that are no JSON", wrong);
    }
  }

  /**
   * Reads parts.
   *
   * @throws IllegalArgumentException if they cannot be read
   */
  static SortedMap<PartName, Part> read(JsonNode json) {
    SortedMap<PartName, Part> parts = new TreeMap<>();
    if (!json.isArray()) {
      throw new IllegalArgumentException("parts that are no array");
    }
    for (JsonNode one : json) {
      PartKind kind =
          PartKind.of(one.path("kind").asText())
              .orElseThrow(
                  () -> new IllegalArgumentException("a part of the kind " + one.path("kind")));
      PartName name = new PartName(kind, jaw(one.path("jaw").asText()), one.path("label").asText());
      if (parts.put(name, new Part(one.path("sha256").asText(), one.path("size").asLong(-1)))
          != null) {
        throw new IllegalArgumentException("two parts called " + name);
      }
    }
    return parts;
  }

  private static String word(Jaw jaw) {
    return switch (jaw) {
      case UPPER -> "upper";
      case LOWER -> "lower";
      case UNKNOWN -> "both";
    };
  }

  private static Jaw jaw(String word) {
    return switch (word) {
      case "upper" -> Jaw.UPPER;
      case "lower" -> Jaw.LOWER;
      case "both" -> Jaw.UNKNOWN;
      default -> throw new IllegalArgumentException("a part of the jaw \"" + word + "\"");
    };
  }
}
