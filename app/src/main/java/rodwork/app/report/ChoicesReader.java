package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.app.AppRefusal;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.geometry.Vec3;

/** Reads what a person chose of a plan; the form is {@code docs/schema/choices.schema.json}. */
public final class ChoicesReader {
  private static final Set<String> NAMES =
      Set.of(
          "format",
          "version",
          "rests",
          "clasps",
          "connector",
          "notUsed",
          "moves",
          "indirect",
          "arms");

  private final String name;

  private ChoicesReader(String name) {
    this.name = name;
  }

  /**
   * Reads a file.
   *
   * @throws rodwork.geometry.Refusal if it cannot be read or used
   */
  public static Choices read(Path file) {
    String name = String.valueOf(file);
    try {
      return of(Json.read(Files.readString(file)), name);
    } catch (JsonProcessingException failure) {
      throw AppRefusal.CHOICES_UNUSABLE.with(
          name, "it is not JSON: " + failure.getOriginalMessage());
    } catch (IOException failure) {
      throw AppRefusal.CHOICES_UNUSABLE.with(name, "it cannot be read: " + failure.getMessage());
    }
  }

  /**
   * Takes a JSON object; an absent one chooses nothing.
   *
   * @param name what messages call it
   */
  public static Choices of(JsonNode json, String name) {
    return new ChoicesReader(name).choices(json);
  }

  private Choices choices(JsonNode json) {
    if (json.isMissingNode() || json.isNull()) {
      return Choices.NONE;
    }
    if (!json.isObject()) {
      throw wrong("it is no object");
    }
    json.fieldNames()
        .forEachRemaining(
            field -> {
              if (!NAMES.contains(field)) {
                throw wrong("it has a field \"" + field + "\"");
              }
            });
    Map<ToothNumber, Choices.RestChoice> rests = new HashMap<>();
    json.path("rests").properties().forEach(e -> rests.put(tooth(e.getKey()), rest(e.getValue())));
    Map<ToothNumber, String> clasps = new HashMap<>();
    json.path("clasps")
        .properties()
        .forEach(e -> clasps.put(tooth(e.getKey()), e.getValue().asText()));
    Set<ToothNumber> notUsed = new HashSet<>();
    json.path("notUsed").forEach(t -> notUsed.add(tooth(t.asText())));
    List<Choices.BorderMove> moves = new ArrayList<>();
    json.path("moves")
        .forEach(
            m -> moves.add(new Choices.BorderMove(point(m.path("from")), point(m.path("to")))));
    Map<ToothNumber, Choices.RestChoice> added = new HashMap<>();
    Set<ToothNumber> taken = new HashSet<>();
    json.path("indirect")
        .properties()
        .forEach(
            e -> {
              if (e.getValue().asText().equals(Choices.NONE_THERE)) {
                taken.add(tooth(e.getKey()));
              } else {
                added.put(tooth(e.getKey()), rest(e.getValue()));
              }
            });
    return new Choices(
        rests,
        clasps,
        json.hasNonNull("connector")
            ? Optional.of(
                word(Part.ConnectorKind.values(), json.get("connector"), "kind of major connector"))
            : Optional.empty(),
        notUsed,
        moves,
        added,
        taken,
        ArmsReader.of(json.path("arms"), this::wrong));
  }

  private Choices.RestChoice rest(JsonNode node) {
    return new Choices.RestChoice(
        word(Part.RestKind.values(), node.path("kind"), "kind of rest"), side(node.path("side")));
  }

  private ToothNumber tooth(String fdi) {
    if (!fdi.matches("[1-4][1-8]")) {
      throw wrong("\"" + fdi + "\" is no FDI number of a tooth");
    }
    return ToothNumber.of(Integer.parseInt(fdi));
  }

  private Surface side(JsonNode node) {
    return word(
        new Surface[] {Surface.MESIAL, Surface.DISTAL, Surface.LINGUAL}, node, "side of a rest");
  }

  private <E extends Enum<E>> E word(E[] all, JsonNode node, String what) {
    return Stream.of(all)
        .filter(v -> name(v).equals(node.asText()))
        .findFirst()
        .orElseThrow(
            () ->
                wrong(
                    "\""
                        + node.asText()
                        + "\" is no "
                        + what
                        + "; there are "
                        + Stream.of(all).map(ChoicesReader::name).toList()));
  }

  /** The name of a kind in JSON. */
  static String name(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private Vec3 point(JsonNode node) {
    if (!node.isArray() || node.size() != 3) {
      throw wrong("a moved point is three numbers [mm], not " + node);
    }
    Vec3 p =
        new Vec3(
            node.get(0).asDouble(Double.NaN),
            node.get(1).asDouble(Double.NaN),
            node.get(2).asDouble(Double.NaN));
    if (!p.isFinite()) {
      throw wrong("a moved point is three numbers [mm], not " + node);
    }
    return p;
  }

  private rodwork.geometry.Refusal wrong(String why) {
    return AppRefusal.CHOICES_UNUSABLE.with(name, why);
  }
}
