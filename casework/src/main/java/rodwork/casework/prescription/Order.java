package rodwork.casework.prescription;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the prescriber writes that no scan tells. A field that is not filled in prints as a blank to
 * be written on. Immutable.
 *
 * @param texts by field; without entry: blank
 * @param stages asked for; empty: nothing is said, and what is usual is proposed
 */
public record Order(Map<Field, String> texts, Optional<Set<Stage>> stages) {
  public static final Order BLANK = new Order(Map.of(), Optional.empty());
  private static final int LONGEST = 600;

  /** The member of the JSON that lists stages; its other members are texts. */
  static final String STAGES_ASKED = "stagesAsked";

  /** The fields, in the order in which they are printed. */
  public enum Field {
    PRESCRIBER("prescriber"),
    REGISTRATION("registration or licence no."),
    PRACTICE("practice or institution"),
    LABORATORY("laboratory"),
    LABORATORY_ADDRESS("address of the laboratory"),
    SENT("sent on"),
    DUE("wanted on"),
    STAGES("stages: remarks"),
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
    stages = stages.map(Set::copyOf);
  }

  public String text(Field field) {
    return texts.getOrDefault(field, "");
  }

  /** The same order with stages that are asked for. */
  public Order withStages(Set<Stage> asked) {
    return new Order(texts, Optional.of(asked));
  }

  /**
   * Reads an order: a JSON object of texts, and the stages asked for as a list of their keys.
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
    Optional<Set<Stage>> stages =
        json.has(STAGES_ASKED)
            ? Optional.of(stages(json.get(STAGES_ASKED), name))
            : Optional.empty();
    json.properties()
        .forEach(
            entry -> {
              if (entry.getKey().equals(STAGES_ASKED)) {
                return;
              }
              Field field = field(entry.getKey(), name);
              JsonNode value = entry.getValue();
              if (!value.isTextual() || value.asText().length() > LONGEST) {
                throw PrescriptionProblem.ORDER_WRONG.with(
                    name,
                    "\"" + entry.getKey() + "\" is no text of at most " + LONGEST + " characters");
              }
              texts.put(field, value.asText().strip());
            });
    return new Order(texts, stages);
  }

  private static Set<Stage> stages(JsonNode list, String name) {
    List<String> keys = new ArrayList<>();
    list.forEach(key -> keys.add(key.asText()));
    if (!list.isArray()) {
      throw PrescriptionProblem.ORDER_WRONG.with(
          name, "\"" + STAGES_ASKED + "\" is no list of stages");
    }
    return Stage.named(keys, name);
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
