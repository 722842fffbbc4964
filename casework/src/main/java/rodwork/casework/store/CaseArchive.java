package rodwork.casework.store;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A whole case in one file: a zip with {@code case.json} (every state there was) and {@code
 * content/HASH} for each content. What is imported is exported again byte for byte.
 */
public final class CaseArchive {
  static final String FORMAT = "rodwork case";
  static final int VERSION = 1;
  static final String LIST = "case.json";

  private CaseArchive() {}

  /** Writes a case with its history. */
  public static void export(CaseStore store, CaseCode code, Path file) {
    CaseFile standing = store.get(code);
    List<Revision> revisions = store.history(code);
    ZipOut.write(
        file,
        zip -> {
          zip.put(LIST, list(standing, revisions).getBytes(StandardCharsets.UTF_8));
          for (Part part : contents(revisions)) {
            zip.put("content/" + part.hash(), store.read(part));
          }
        });
  }

  private static String list(CaseFile standing, List<Revision> revisions) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("version", VERSION);
    json.put("code", standing.code().text());
    json.put("head", standing.now().number());
    json.put("tip", standing.tip());
    ArrayNode states = json.putArray("revisions");
    for (Revision revision : revisions) {
      ObjectNode one = states.addObject();
      one.put("number", revision.number());
      one.put("parent", revision.parent());
      one.put("at", revision.at().toString());
      one.put("action", revision.action());
      one.set("parts", PartsJson.of(revision.parts()));
    }
    return json.toPrettyString() + "\n";
  }

  private static List<Part> contents(List<Revision> revisions) {
    return revisions.stream()
        .flatMap(revision -> revision.parts().values().stream())
        .distinct()
        .sorted(Comparator.comparing(Part::hash))
        .toList();
  }

  /**
   * Takes a case in.
   *
   * @param as another code than its own; empty: its own
   * @return the case as it stands
   */
  public static CaseFile load(CaseStore store, Path file, Optional<CaseCode> as) {
    try (ZipIn zip = ZipIn.open(file)) {
      JsonNode json = zip.list(LIST, FORMAT, VERSION);
      CaseCode code = as.orElseGet(() -> new CaseCode(json.path("code").asText()));
      List<Revision> revisions = new ArrayList<>();
      try {
        json.path("revisions").forEach(one -> revisions.add(revision(one)));
      } catch (IllegalArgumentException | DateTimeException wrong) {
        throw zip.wrong("its list of states cannot be read (" + wrong.getMessage() + ")");
      }
      int head = json.path("head").asInt(-1);
      int tip = json.path("tip").asInt(-1);
      String flaw = flaw(revisions, head, tip);
      if (flaw != null) {
        throw zip.wrong(flaw);
      }
      Map<Part, byte[]> contents = new TreeMap<>(Comparator.comparing(Part::hash));
      for (Part part : contents(revisions)) {
        contents.put(part, zip.content(part));
      }
      zip.nothingElse();
      return store.adopt(code, revisions, head, tip, contents);
    }
  }

  private static Revision revision(JsonNode json) {
    JsonNode parent = json.path("parent");
    SortedMap<PartName, Part> parts = PartsJson.read(json.path("parts"));
    return new Revision(
        json.path("number").asInt(-1),
        parent.isInt() ? parent.asInt() : null,
        Instant.parse(json.path("at").asText()),
        json.path("action").asText(),
        parts);
  }

  /** What is wrong with the order of the states; null: nothing. */
  private static @Nullable String flaw(List<Revision> revisions, int head, int tip) {
    for (int i = 0; i < revisions.size(); i++) {
      Revision revision = revisions.get(i);
      Integer parent = revision.parent();
      boolean rooted = i == 0 ? parent == null : parent != null && parent >= 1 && parent <= i;
      if (revision.number() != i + 1 || !rooted) {
        return "state " + (i + 1) + " is out of order";
      }
    }
    if (head < 1 || head > revisions.size() || tip < head || tip > revisions.size()) {
      return "it stands at state " + head + " of " + revisions.size();
    }
    Integer at = tip;
    while (at != null && at > head) {
      at = revisions.get(at - 1).parent();
    }
    return at != null && at == head ? null : "state " + tip + " does not follow from " + head;
  }
}
