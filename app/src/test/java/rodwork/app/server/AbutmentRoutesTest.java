package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.testing.Shared;

/** A real server that goes by a school's rulebook, with a real arch, asked as the bench asks. */
class AbutmentRoutesTest {
  /** The shipped rulebook with a limit that no bar can meet: no two lines cross at 120 degrees. */
  private static final Rulebook MINE =
      Rulebook.of(
          "mine",
          Rulebook.shipped()
              .text()
              .replace("title: Rodwork's own rulebook", "title: A school's")
              .replace("bar-crossing-least: {value: 75,", "bar-crossing-least: {value: 120,"));

  private static BenchServer server;
  private static Visitor visitor;
  private static String cast;

  @BeforeAll
  static void open(@TempDir Path bench) throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    server = BenchServer.start(BenchServer.Settings.of(bench, "127.0.0.1", 0, bench).with(MINE));
    visitor = new Visitor(server);
    byte[] scan = Files.readAllBytes(Shared.file("arches/upper-14.ply"));
    cast =
        "/api/casts/"
            + visitor.json("POST", "/api/casts?name=a.ply&jaw=upper", scan, 201).get("id").asText();
    visitor.json("POST", cast + "/teeth", "{\"missing\":[14]}", 200);
  }

  @AfterAll
  static void stop() {
    visitor.close();
    server.close();
  }

  private static JsonNode judged(String body) throws IOException {
    JsonNode json = visitor.json("POST", cast + "/abutments", body, 200);
    assertThat(Schemas.errors("abutments", json)).isEmpty();
    return json;
  }

  private static JsonNode family(JsonNode json, String row, String id) {
    for (JsonNode abutment : json.get("abutments")) {
      String name = abutment.get("tooth").asInt() + " " + abutment.get("side").asText();
      if (name.equals(row)) {
        for (JsonNode family : abutment.get("families")) {
          if (family.get("family").asText().equals(id)) {
            return family;
          }
        }
      }
    }
    throw new AssertionError("no " + id + " in row " + row);
  }

  @Test
  void theBenchGoesByTheRulebookItWasStartedWith() throws IOException {
    JsonNode json = judged("{}");
    assertThat(json.get("rulebook").get("title").asText()).isEqualTo("A school's");
    assertThat(json.get("rulebook").get("hash").asText())
        .isEqualTo(MINE.hash())
        .isNotEqualTo(Rulebook.shipped().hash());
    for (String bar : new String[] {"i-bar", "t-bar", "modified-t-bar", "y-bar"}) {
      assertThat(family(json, "15 mesial", bar).get("answer").asText()).isEqualTo("does not serve");
    }
  }

  /** Who reads it may count teeth otherwise than by FDI. */
  @Test
  void aRefusalTellsItsTeethApart() throws IOException {
    JsonNode json = visitor.json("POST", cast + "/abutments", "{\"teeth\":[14]}", 422);
    assertThat(json.get("code").asText()).isEqualTo("tooth-not-found");
    assertThat(json.get("message").asText()).startsWith("Tooth 14 is not");
    assertThat(json.get("pieces").get(0).asText()).isEqualTo("Tooth ");
    assertThat(json.get("pieces").get(1).isInt()).isTrue();
    assertThat(json.get("pieces").get(1).asInt()).isEqualTo(14);
  }

  @Test
  void aPulledArmIsLaidWhereItWasPulledAndJudgedThere() throws IOException {
    JsonNode asLaid = spoken("[]");
    JsonNode line = asLaid.get("retentive").get("line");
    JsonNode tip = line.get(line.size() - 1);
    // Half a millimetre along the arm's own last step: still on the tooth.
    JsonNode before = line.get(line.size() - 3);
    String to =
        String.format(
            java.util.Locale.ROOT,
            "[%.4f,%.4f,%.4f]",
            before.get(0).asDouble(),
            before.get(1).asDouble(),
            before.get(2).asDouble());
    JsonNode pulled = spoken("[{\"at\":1,\"to\":" + to + "}]");
    JsonNode moved = pulled.get("retentive").get("line");
    assertThat(distance(moved.get(moved.size() - 1), before)).isLessThan(0.05);
    assertThat(distance(moved.get(0), line.get(0))).isLessThan(1e-3);
    assertThat(distance(moved.get(moved.size() - 1), tip)).isGreaterThan(0.1);
    assertThat(pulled.get("forces")).isNotEqualTo(asLaid.get("forces"));
    // Nothing is kept between requests.
    assertThat(spoken("[]")).isEqualTo(asLaid);
  }

  private static JsonNode spoken(String pulls) throws IOException {
    JsonNode family =
        family(
            judged(
                "{\"arms\":{\"15 mesial\":{\"family\":\"cast-circumferential\",\"pulls\":"
                    + pulls
                    + "}}}"),
            "15 mesial",
            "cast-circumferential");
    assertThat(family.get("clasp").isNull()).isFalse();
    return family.get("clasp");
  }

  private static double distance(JsonNode a, JsonNode b) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += Math.pow(a.get(k).asDouble() - b.get(k).asDouble(), 2);
    }
    return Math.sqrt(sum);
  }

  @Test
  void armsThatCannotBeAreRefused() throws IOException {
    for (String arms :
        new String[] {
          "{\"15\":{}}",
          "{\"15 upwards\":{}}",
          "{\"99 mesial\":{}}",
          "{\"15 mesial\":{\"family\":\"i-bar\",\"pulls\":[{\"at\":2,\"to\":[0,0,0]}]}}",
          "{\"15 mesial\":{\"family\":\"i-bar\",\"pulls\":[{\"at\":1,\"to\":[0,0]}]}}"
        }) {
      var answer =
          visitor.ask(
              "POST", cast + "/abutments", BodyPublishers.ofString("{\"arms\":" + arms + "}"));
      assertThat(answer.statusCode()).as(arms).isBetween(400, 422);
      assertThat(Json.read(new String(answer.body(), StandardCharsets.UTF_8)).get("code").asText())
          .isEqualTo("request-unreadable");
    }
  }
}
