package rodwork.casework.prescription;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/**
 * What the prescriber writes that no scan tells. A field that is not filled in prints as a blank to
 * be written on. Immutable.
 *
 * @param texts by field; without entry: blank
 */
public record Order(Map<Field, String> texts) {
  public static final Order BLANK = new Order(Map.of());
  private static final int LONGEST = 600;

  /** The fields, in the order in which they are printed. */
  public enum Field {
    PRESCRIBER("prescriber"),
    REGISTRATION("registration or licence no."),
    PRACTICE("practice or institution"),
    LABORATORY("laboratory"),
    LABORATORY_ADDRESS("address of the laboratory"),
    SENT("sent on"),
    DUE("wanted on"),
    STAGES("stages asked for"),
    OPPOSING("opposing arch: what is there, cast or scan sent"),
    OCCLUSION("occlusion and record sent"),
    FRAMEWORK("framework: alloy and making"),
    RELIEF("relief and block-out wanted"),
    BASE("denture base: material"),
    TEETH("artificial teeth: mould, material"),
    SHADE("shade, guide"),
    DISINFECTION("disinfection: what was done, when, by whom"),
    NOTES("notes");

    private final String words;

    Field(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** The name in JSON, such as {@code laboratoryAddress}. */
    public String key() {
      String[] words = name().toLowerCase(Locale.ROOT).split("_", -1);
      StringBuilder key = new StringBuilder(words[0]);
      for (int i = 1; i < words.length; i++) {
        key.append(words[i].substring(0, 1).toUpperCase(Locale.ROOT)).append(words[i].substring(1));
      }
      return key.toString();
    }
  }

  public Order {
    texts = Map.copyOf(texts);
  }

  public String text(Field field) {
    return texts.getOrDefault(field, "");
  }

  /**
   * Reads an order: a JSON object of texts.
   *
   * @param name what messages call it
   */
  public static Order read(String text, String name) {
    JsonNode json;
    try {
      json = new ObjectMapper().readTree(text);
    } catch (JsonProcessingException wrong) {
      int line = wrong.getLocation() == null ? 0 : wrong.getLocation().getLineNr();
      throw PrescriptionProblem.ORDER_WRONG.with(name, "it is no JSON (line " + line + ")");
    }
    if (json == null || !json.isObject()) {
      throw PrescriptionProblem.ORDER_WRONG.with(name, "it is no JSON object");
    }
    Map<Field, String> texts = new EnumMap<>(Field.class);
    json.properties()
        .forEach(
            entry -> {
              Field field = field(entry.getKey(), name);
              JsonNode value = entry.getValue();
              if (!value.isTextual() || value.asText().length() > LONGEST) {
                throw PrescriptionProblem.ORDER_WRONG.with(
                    name,
                    "\"" + entry.getKey() + "\" is no text of at most " + LONGEST + " characters");
              }
              texts.put(field, value.asText().strip());
            });
    return new Order(texts);
  }

  private static Field field(String key, String name) {
    for (Field field : Field.values()) {
      if (field.key().equals(key)) {
        return field;
      }
    }
    throw PrescriptionProblem.ORDER_WRONG.with(name, "it has no field \"" + key + "\"");
  }
}
