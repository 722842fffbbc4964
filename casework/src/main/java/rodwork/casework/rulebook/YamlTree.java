package rodwork.casework.rulebook;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;

/**
 * A YAML text as a tree that remembers the line of each of its parts. Keys that occur twice and
 * aliases are refused.
 */
final class YamlTree {
  private static final YAMLFactory FACTORY =
      YAMLFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final int DEEPEST = 40;

  private final String name;
  private final Map<String, Integer> lines = new HashMap<>();
  final JsonNode root;

  private YamlTree(String name, String text) {
    this.name = name;
    try (YAMLParser parser = FACTORY.createParser(text)) {
      JsonToken first = parser.nextToken();
      if (first == null) {
        throw RulebookProblem.NO_YAML.with(name, 1, "it is empty");
      }
      this.root = read(parser, first, "", 0);
      if (parser.nextToken() != null) {
        throw RulebookProblem.NO_YAML.with(
            name, parser.currentTokenLocation().getLineNr(), "a second document begins");
      }
    } catch (JsonProcessingException wrong) {
      JsonLocation where = wrong.getLocation();
      throw RulebookProblem.NO_YAML.with(
          name,
          where == null ? "?" : where.getLineNr(),
          wrong.getOriginalMessage().lines().findFirst().orElse("it cannot be understood"));
    } catch (IOException wrong) {
      throw RulebookProblem.UNREADABLE.with(name, String.valueOf(wrong.getMessage()));
    }
  }

  static YamlTree of(String name, String text) {
    return new YamlTree(name, text);
  }

  private JsonNode read(YAMLParser parser, JsonToken token, String pointer, int depth)
      throws IOException {
    int line = parser.currentTokenLocation().getLineNr();
    lines.putIfAbsent(pointer, line);
    if (depth > DEEPEST || parser.isCurrentAlias()) {
      throw RulebookProblem.NO_YAML.with(
          name, line, depth > DEEPEST ? "it is nested too deeply" : "aliases (*) are not taken");
    }
    return switch (token) {
      case START_OBJECT -> {
        ObjectNode object = NODES.objectNode();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
          String key = parser.currentName();
          String child = pointer + "/" + key.replace("~", "~0").replace("/", "~1");
          lines.put(child, parser.currentTokenLocation().getLineNr());
          object.set(key, read(parser, parser.nextToken(), child, depth + 1));
        }
        yield object;
      }
      case START_ARRAY -> {
        ArrayNode array = NODES.arrayNode();
        for (JsonToken t = parser.nextToken(); t != JsonToken.END_ARRAY; t = parser.nextToken()) {
          array.add(read(parser, t, pointer + "/" + array.size(), depth + 1));
        }
        yield array;
      }
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(parser);
      case VALUE_NULL -> NODES.nullNode();
      // Words: a rulebook says yes, no and off, and none of them is to become true or false.
      default -> new TextNode(parser.getText());
    };
  }

  private static JsonNode number(JsonParser parser) throws IOException {
    return NODES.numberNode(parser.getDecimalValue());
  }

  /** Line of a part, or of the nearest part around it. */
  int line(String pointer) {
    String p = pointer;
    while (!lines.containsKey(p) && !p.isEmpty()) {
      p = p.substring(0, p.lastIndexOf('/'));
    }
    return lines.getOrDefault(p, 1);
  }
}
