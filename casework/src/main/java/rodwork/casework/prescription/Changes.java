package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** What is different between two contents, a line each. */
final class Changes {
  private static final Set<String> NOT_TOLD = Set.of("date");

  private Changes() {}

  static List<String> between(JsonNode before, JsonNode after) {
    List<String> lines = new ArrayList<>();
    compare("", before, after, lines);
    return lines;
  }

  private static void compare(String where, JsonNode before, JsonNode after, List<String> lines) {
    if (before.equals(after)) {
      return;
    }
    if (before.isObject() && after.isObject()) {
      Set<String> names = new TreeSet<>();
      before.fieldNames().forEachRemaining(names::add);
      after.fieldNames().forEachRemaining(names::add);
      names.stream()
          .filter(name -> !(where.isEmpty() && NOT_TOLD.contains(name)))
          .forEach(
              name ->
                  compare(
                      where.isEmpty() ? words(name) : where + ", " + words(name),
                      before.path(name),
                      after.path(name),
                      lines));
      return;
    }
    boolean rows = isRows(before) && isRows(after) && before.size() == after.size();
    if (rows) {
      for (int i = 0; i < after.size(); i++) {
        JsonNode row = after.get(i);
        String tooth = row.path("tooth").isInt() ? row.path("tooth").asText() : "no. " + (i + 1);
        compare(where + " " + tooth, before.get(i), row, lines);
      }
      return;
    }
    lines.add(where + ": " + shown(before) + " → " + shown(after));
  }

  private static boolean isRows(JsonNode json) {
    return json.isArray() && !json.isEmpty() && json.get(0).isObject();
  }

  private static String shown(JsonNode json) {
    if (json.isMissingNode() || json.isNull() || (json.isTextual() && json.asText().isEmpty())) {
      return "nothing";
    }
    if (json.isArray()) {
      return json.isEmpty() || json.get(0).isContainerNode()
          ? json.size() + " entries"
          : join(json);
    }
    return json.isObject() ? "as on the page" : json.asText();
  }

  private static String join(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(one -> texts.add(one.asText()));
    return String.join(", ", texts);
  }

  /** {@code anteriorTiltDeg} reads "anterior tilt deg". */
  private static String words(String name) {
    return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
  }
}
