package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import rodwork.rules.Wording;

/** What is different between two contents, a line each, with teeth apart from words and numbers. */
final class Changes {
  private static final Set<String> NOT_TOLD = Set.of("date");

  /** Fields that hold a tooth, or a list of teeth. */
  static final Set<String> TEETH =
      Set.of(
          "tooth",
          "teeth",
          "space",
          "right",
          "left",
          "present",
          "missing",
          "replaced",
          "replacementNotSaid");

  /** What may be a tooth in FDI within a text, which is kept in FDI alone. */
  private static final Pattern PERHAPS_TOOTH =
      Pattern.compile("(?<![\\d.])[1-4][1-8](?![\\d]|\\.\\d)");

  private Changes() {}

  static List<Wording> between(JsonNode before, JsonNode after) {
    List<Wording> lines = new ArrayList<>();
    compare(Wording.of(), "", before, after, lines);
    return lines;
  }

  private static void compare(
      Wording where, String field, JsonNode before, JsonNode after, List<Wording> lines) {
    if (before.equals(after)) {
      return;
    }
    if (before.isObject() && after.isObject()) {
      Set<String> names = new TreeSet<>();
      before.fieldNames().forEachRemaining(names::add);
      after.fieldNames().forEachRemaining(names::add);
      boolean top = where.pieces().isEmpty();
      names.stream()
          .filter(name -> !(top && NOT_TOLD.contains(name)))
          .forEach(
              name ->
                  compare(
                      top ? Wording.of(words(name)) : Wording.of(where, ", ", words(name)),
                      name,
                      before.path(name),
                      after.path(name),
                      lines));
      return;
    }
    boolean rows = isRows(before) && isRows(after) && before.size() == after.size();
    if (rows) {
      for (int i = 0; i < after.size(); i++) {
        JsonNode row = after.get(i);
        Object name =
            row.path("tooth").isInt()
                ? new Wording.Piece.Tooth(row.path("tooth").asInt())
                : "no. " + (i + 1);
        compare(Wording.of(where, " ", name), "", before.get(i), row, lines);
      }
      return;
    }
    Wording change = Wording.of(shown(field, before), " → ", shown(field, after));
    lines.add(
        Wording.of(
            where,
            ": ",
            perhapsTeeth(before) || perhapsTeeth(after)
                ? new Wording.Piece.Fdi(change.fdi())
                : change));
  }

  private static boolean perhapsTeeth(JsonNode json) {
    return json.isArray()
        ? StreamSupport.stream(json.spliterator(), false).anyMatch(Changes::perhapsTeeth)
        : json.isTextual() && PERHAPS_TOOTH.matcher(json.asText()).find();
  }

  private static boolean isRows(JsonNode json) {
    return json.isArray() && !json.isEmpty() && json.get(0).isObject();
  }

  private static Object shown(String field, JsonNode json) {
    if (json.isMissingNode() || json.isNull() || (json.isTextual() && json.asText().isEmpty())) {
      return "nothing";
    }
    if (json.isArray()) {
      return json.isEmpty() || json.get(0).isContainerNode()
          ? json.size() + " entries"
          : StreamSupport.stream(json.spliterator(), false).map(one -> shown(field, one)).toList();
    }
    if (json.isInt() && TEETH.contains(field)) {
      return new Wording.Piece.Tooth(json.asInt());
    }
    return json.isObject() ? "as on the page" : json.asText();
  }

  /** {@code anteriorTiltDeg} reads "anterior tilt deg". */
  private static String words(String name) {
    return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
  }
}
