package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.testing.Shared;

/** Every limit that the bench draws or words by is told with the cast, from its own rulebook. */
class BenchRulesTest {
  /** What the bench is told, the line of the shipped rulebook it comes from, and another value. */
  private static final Map<String, Change> CHANGES = changes();

  private record Change(String from, String to, double before, double after) {}

  private static Map<String, Change> changes() {
    Map<String, Change> changes = new LinkedHashMap<>();
    changes.put("accuracyMm", change("scan-accuracy", "0.03", "0.04"));
    changes.put("capMm", change("undercut-cap", "4", "3"));
    changes.put("noteTiltDeg", change("tilt-note", "5", "4"));
    changes.put("warnTiltDeg", change("tilt-warn", "10", "9"));
    changes.put("limitTiltDeg", change("tilt-limit", "15", "14"));
    changes.put("shallowMm", change("shallow-undercut", "0.05", "0.06"));
    changes.put("freeMm", change("line-upper-depth", "0.02", "0.03"));
    changes.put("holdsAtReferenceMm", change("path-holds-at-reference", "0.05", "0.08"));
    changes.put("shankRadiusMm", change("gauge-shank-radius", "0.5", "0.6"));
    changes.put("shankReachMm", change("gauge-shank-reach", "0.05", "0.07"));
    changes.put("closedSpaceMm", change("space-closed", "2", "30"));
    changes.put(
        "mobilityFirstMm",
        new Change(
            "taken: one\n    because: \"the definition",
            "taken: two\n    because: \"the definition",
            1,
            2));
    return changes;
  }

  private static Change change(String id, String from, String to) {
    return new Change(
        "    " + id + ": {value: " + from + ",",
        "    " + id + ": {value: " + to + ",",
        Double.parseDouble(from),
        Double.parseDouble(to));
  }

  private static Rulebook school() {
    String text = Rulebook.shipped().text();
    for (Change change : CHANGES.values()) {
      assertThat(text).contains(change.from);
      text = text.replace(change.from, change.to);
    }
    return Rulebook.of("school", text);
  }

  @Test
  void limitsAreThoseOfTheRulebook(@TempDir Path bench) throws IOException {
    told(bench, Rulebook.shipped(), false);
    told(bench, school(), true);
  }

  private static void told(Path bench, Rulebook book, boolean changed) throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    try (BenchServer server =
            BenchServer.start(BenchServer.Settings.of(bench, "127.0.0.1", 0, bench).with(book));
        Visitor visitor = new Visitor(server)) {
      byte[] scan = Files.readAllBytes(Shared.file("arches/upper-14.ply"));
      JsonNode opened = visitor.json("POST", "/api/casts?name=a.ply&jaw=upper", scan, 201);
      String cast = "/api/casts/" + opened.get("id").asText();
      JsonNode asked = visitor.json("GET", cast, "", 200);
      JsonNode turned = visitor.json("POST", cast + "/frame", "{\"jaw\":\"upper\"}", 200);
      CHANGES.forEach(
          (name, change) -> {
            for (JsonNode info : new JsonNode[] {opened, asked, turned}) {
              assertThat(info.get(name).asDouble())
                  .as(name)
                  .isEqualTo(changed ? change.after : change.before);
            }
          });
      JsonNode spaces =
          visitor.json("POST", cast + "/teeth", "{\"missing\":[14]}", 200).get("spaces");
      assertThat(spaces).isNotEmpty();
      for (JsonNode space : spaces) {
        assertThat(space.get("closed").asBoolean()).isEqualTo(changed);
      }
    }
  }
}
