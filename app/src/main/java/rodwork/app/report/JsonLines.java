package rodwork.app.report;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;

/** A JSON text that knows the line of each of its values, so that messages can name it. */
final class JsonLines {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private final JsonNode root;
  private final Map<String, Integer> lines;

  /** The text is no JSON. */
  static final class NoJson extends Exception {
    private static final long serialVersionUID = 1L;
    private final int line;

    NoJson(int line) {
      this.line = line;
    }

    int line() {
      return line;
    }
  }

  private JsonLines(JsonNode root, Map<String, Integer> lines) {
    this.root = root;
    this.lines = lines;
  }

  static JsonLines of(String text) throws NoJson {
    try {
      Map<String, Integer> lines = new HashMap<>();
      JsonNode root = MAPPER.readTree(text);
      try (JsonParser parser = MAPPER.createParser(text)) {
        JsonToken token = parser.nextToken();
        while (token != null) {
          lines.putIfAbsent(
              parser.getParsingContext().pathAsPointer().toString(),
              parser.currentTokenLocation().getLineNr());
          token = parser.nextToken();
        }
      }
      return new JsonLines(root, lines);
    } catch (JsonProcessingException wrong) {
      throw new NoJson(wrong.getLocation() == null ? 1 : wrong.getLocation().getLineNr());
    } catch (IOException failed) {
      throw new UncheckedIOException(failed); // a text in memory is always readable
    }
  }

  JsonNode root() {
    return root;
  }

  /** The line of a value, by its JSON pointer; of what it should be in where it is absent. */
  int line(String pointer) {
    String at = pointer;
    while (!lines.containsKey(at) && !at.isEmpty()) {
      at = at.substring(0, at.lastIndexOf('/'));
    }
    return lines.getOrDefault(at, 1);
  }
}
