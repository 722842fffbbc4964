package rodwork.casework.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Refusal;
import rodwork.rules.Range;
import rodwork.rules.Standing;

/** A part of a rulebook that knows its line; the schema has seen that it is of the right kind. */
record Entry(String file, YamlTree tree, String pointer, JsonNode node) {
  static Entry root(String file, YamlTree tree) {
    return new Entry(file, tree, "", tree.root);
  }

  Entry at(String key) {
    Entry found = find(key);
    if (found == null) {
      throw wrong("\"" + key + "\" is missing");
    }
    return found;
  }

  @Nullable Entry find(String key) {
    JsonNode child = node.get(key);
    return child == null ? null : new Entry(file, tree, pointer + "/" + key, child);
  }

  List<Entry> items() {
    List<Entry> items = new ArrayList<>();
    for (int i = 0; i < node.size(); i++) {
      items.add(new Entry(file, tree, pointer + "/" + i, node.get(i)));
    }
    return items;
  }

  Map<String, Entry> fields() {
    Map<String, Entry> fields = new LinkedHashMap<>();
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String key = names.next();
      fields.put(key, at(key));
    }
    return fields;
  }

  String text() {
    return node.asText();
  }

  /** One word, or a list of them. */
  List<String> words() {
    return node.isArray() ? items().stream().map(Entry::text).toList() : List.of(text());
  }

  double number() {
    return node.doubleValue();
  }

  Range range() {
    return make(() -> new Range(node.get(0).doubleValue(), node.get(1).doubleValue()));
  }

  Standing standing() {
    for (Standing s : Standing.values()) {
      if (s.words().equals(text())) {
        return s;
      }
    }
    throw wrong("no standing is called \"" + text() + "\"");
  }

  /** Makes something of this entry; what it cannot take is said with the line. */
  <T> T make(Supplier<T> maker) {
    try {
      return maker.get();
    } catch (IllegalArgumentException impossible) {
      throw wrong(String.valueOf(impossible.getMessage()));
    }
  }

  int line() {
    return tree.line(pointer);
  }

  Refusal wrong(String why) {
    return RulebookProblem.FIELD.with(
        file, line(), pointer.isEmpty() ? "/" : pointer.substring(1).replace('/', '.'), why);
  }
}
