package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.geometry.testing.Shared;

/** A real server with a real arch on it, asked for plans as the bench asks. */
class PlanRoutesTest {
  private static BenchServer server;
  private static Visitor visitor;
  private static String cast;

  @BeforeAll
  static void open(@TempDir Path bench) throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    server =
        BenchServer.start(BenchServer.Settings.of(bench, "127.0.0.1", 0, bench.resolve("cases")));
    visitor = new Visitor(server);
    byte[] scan = Files.readAllBytes(Shared.file("arches/upper-14.ply"));
    cast =
        "/api/casts/"
            + visitor.json("POST", "/api/casts?name=a.ply&jaw=upper", scan, 201).get("id").asText();
    assertThat(refused("{}")).isEqualTo("plan-needs-teeth");
    visitor.json("POST", cast + "/teeth", "{\"missing\":[14]}", 200);
  }

  @AfterAll
  static void stop() {
    visitor.close();
    server.close();
  }

  private static String refused(String body) throws IOException {
    var answer = visitor.ask("POST", cast + "/plan", BodyPublishers.ofString(body));
    assertThat(answer.statusCode()).as(body).isBetween(400, 422);
    return Json.read(new String(answer.body(), StandardCharsets.UTF_8)).get("code").asText();
  }

  private static JsonNode plan(String body) throws IOException {
    JsonNode answer = visitor.json("POST", cast + "/plan", body, 200);
    assertThat(Schemas.errors("plan", answer.get("plan"))).isEmpty();
    return answer;
  }

  @Test
  void aPlanComesWithItsDrawingAtThePathAskedFor() throws IOException {
    JsonNode answer = plan("{\"tilt\":[2,0]}");
    JsonNode plan = answer.get("plan");
    assertThat(plan.get("replaced").toString()).isEqualTo("[14]");
    assertThat(plan.get("clasps")).isNotEmpty();
    assertThat(plan.get("majorConnector").get("towardsTeeth")).isNotEmpty();
    assertThat(answer.get("drawing").asText())
        .startsWith("<svg")
        .contains("data-view=\"from above\"", "class=\"connector\"");
    JsonNode upright = plan("{}").get("plan");
    assertThat(upright.get("axis")).isNotEqualTo(plan.get("axis"));
  }

  /** A level sheet over the arch: what the rules hold against is then measured; without it not. */
  @Test
  void aLaidOpposingScanIsAskedByLedgerAndPlan() throws IOException {
    JsonNode frame = visitor.json("GET", cast, "", 200).get("frame");
    double[][] sheet = new double[4][3];
    for (int corner = 0; corner < 4; corner++) {
      for (int i = 0; i < 3; i++) {
        sheet[corner][i] =
            frame.get("origin").get(i).asDouble()
                + (corner % 2 == 0 ? -40 : 40) * frame.get("x").get(i).asDouble()
                + (corner < 2 ? -40 : 40) * frame.get("y").get(i).asDouble()
                + 15 * frame.get("z").get(i).asDouble();
      }
    }
    StringBuilder off = new StringBuilder("OFF\n4 2 0\n");
    for (double[] p : sheet) {
      off.append(p[0]).append(' ').append(p[1]).append(' ').append(p[2]).append('\n');
    }
    byte[] content = off.append("3 0 1 2\n3 1 3 2\n").toString().getBytes(StandardCharsets.UTF_8);
    String other =
        visitor.json("POST", "/api/casts?name=sheet.off", content, 201).get("id").asText();
    assertThat(roomsKnown()).as("before").isEmpty();
    visitor.json("POST", cast + "/opposing", "{\"opposing\":\"" + other + "\"}", 200);
    assertThat(roomsKnown()).as("laid").hasSizeGreaterThan(3);
    assertThat(embrasures()).as("laid").contains("measured");
    visitor.json("POST", cast + "/opposing", "{\"opposing\":null}", 200);
    assertThat(roomsKnown()).as("taken away").isEmpty();
    assertThat(embrasures()).as("taken away").containsOnly("not-known");
    visitor.ask("DELETE", "/api/casts/" + other, BodyPublishers.noBody());
  }

  private static List<JsonNode> roomsKnown() throws IOException {
    List<JsonNode> known = new ArrayList<>();
    for (JsonNode finding : plan("{}").get("plan").get("findings")) {
      if (finding.get("what").asText().contains("opposing")
          && finding.get("reading").get("kind").asText().equals("measured")) {
        known.add(finding);
      }
    }
    return known;
  }

  private static List<String> embrasures() throws IOException {
    List<String> kinds = new ArrayList<>();
    for (JsonNode abutment :
        visitor.json("POST", cast + "/abutments", "{}", 200).get("abutments")) {
      for (JsonNode fact : abutment.get("facts")) {
        if (fact.get("fact").asText().equals("occlusal-room")) {
          kinds.add(fact.get("reading").get("kind").asText());
        }
      }
    }
    return kinds;
  }

  /**
   * An arm pulled in the ledger is the arm of plan, drawing and prescription, and of nothing else.
   */
  @Test
  void anArmShapedByHandIsThatOfPlanDrawingAndPrescription() throws IOException {
    JsonNode first = plan("{}");
    JsonNode before = clasp(first, 15);
    JsonNode line = before.get("retentive").get("points");
    JsonNode to = line.get(line.size() * 3 / 4);
    String choices =
        "{\"choices\":{\"clasps\":{\"15\":\"%1$s\"},\"arms\":{\"15 %2$s\":{\"family\":\"%1$s\",\"pulls\":[{\"at\":1,\"to\":%3$s}]}}}}"
            .formatted(before.get("family").asText(), before.get("side").asText(), to);
    JsonNode shaped = plan(choices);
    JsonNode after = clasp(shaped, 15);
    assertThat(before.get("byHand").asBoolean()).isFalse();
    assertThat(after.get("byHand").asBoolean()).isTrue();
    assertThat(distance(after.get("tip"), to)).isLessThan(0.05);
    assertThat(distance(before.get("tip"), to)).isGreaterThan(0.5);
    JsonNode arm = after.get("retentive").get("points");
    assertThat(distance(arm.get(arm.size() - 1), to)).isLessThan(0.05);
    assertThat(shaped.get("drawing").asText()).isNotEqualTo(first.get("drawing").asText());
    var folder =
        visitor.ask("POST", cast + "/prescription/folder", BodyPublishers.ofString(choices));
    Map<String, byte[]> files = unzipped(folder.body());
    JsonNode json = Json.read(new String(files.get("prescription.json"), StandardCharsets.UTF_8));
    assertThat(Schemas.errors("prescription", json)).isEmpty();
    for (JsonNode row : json.get("content").get("abutments")) {
      if (row.get("clasp").isObject()) {
        assertThat(row.get("clasp").get("armByHand").asBoolean())
            .as(row.get("tooth").asText())
            .isEqualTo(row.get("tooth").asInt() == 15);
      }
    }
    JsonNode kept = Json.read(new String(files.get("plan.json"), StandardCharsets.UTF_8));
    assertThat(distance(clasp(kept, 15).get("tip"), to)).isLessThan(0.05);
    assertThat(clasp(plan("{}"), 15)).as("nothing is kept between requests").isEqualTo(before);
    assertThat(refused("{\"choices\":{\"arms\":{\"15\":{}}}}")).isEqualTo("choices-unusable");
  }

  private static JsonNode clasp(JsonNode answer, int tooth) {
    for (JsonNode clasp :
        answer.path("plan").isObject() ? answer.get("plan").get("clasps") : answer.get("clasps")) {
      if (clasp.get("tooth").asInt() == tooth) {
        return clasp;
      }
    }
    throw new AssertionError("no clasp on " + tooth);
  }

  private static double distance(JsonNode a, JsonNode b) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += Math.pow(a.get(k).asDouble() - b.get(k).asDouble(), 2);
    }
    return Math.sqrt(sum);
  }

  @Test
  void eachCutIsDrawnOnTheCastAndInSectionWithinItsDepth() throws IOException {
    JsonNode answer = plan("{}");
    JsonNode steps = answer.get("plan").get("preparation").get("steps");
    assertThat(steps).isNotEmpty();
    assertThat(answer.get("cuts")).isNotEmpty();
    for (JsonNode cut : answer.get("cuts")) {
      JsonNode step = steps.get(cut.get("step").asInt() - 1);
      assertThat(step.get("number")).isEqualTo(cut.get("step"));
      assertThat(cut.get("contours")).isNotEmpty();
      for (JsonNode contour : cut.get("contours")) {
        assertThat(contour.get("depthMm").asDouble())
            .isLessThanOrEqualTo(step.get("amountMm").asDouble());
        assertThat(contour.get("pieces").size()).isPositive().matches(n -> n % 6 == 0);
      }
      assertThat(cut.get("before").size()).isPositive().isEqualTo(cut.get("after").size());
      assertThat(cut.get("before")).isNotEqualTo(cut.get("after"));
    }
  }

  @Test
  void choicesAndAnswersChangeThePlanAndTakenBackLeaveIt() throws IOException {
    JsonNode before = plan("{}").get("plan");
    JsonNode chosen =
        plan("{\"choices\":{\"clasps\":{\"15\":\"none\"},\"connector\":\"palatal-plate\"}}")
            .get("plan");
    assertThat(teeth(before.get("clasps"))).contains(15);
    assertThat(teeth(chosen.get("clasps"))).doesNotContain(15);
    assertThat(chosen.get("majorConnector").get("kind").asText()).isEqualTo("palatal-plate");
    assertThat(plan("{}").get("plan")).isEqualTo(before);
  }

  @Test
  void thePrescriptionIsThatOfTheChoicesAndItsCaseCountsRevisions() throws IOException {
    String id = cast.substring(cast.lastIndexOf('/') + 1);
    int on =
        visitor
            .json(
                "PUT",
                "/api/cases/P-1",
                "{\"cast\":\"" + id + "\",\"bench\":{\"document\":{}}}",
                201)
            .get("revision")
            .asInt();
    String ask =
        "{\"choices\":{\"connector\":\"palatal-plate\"},\"order\":{\"prescriber\":\"Dr A.\"},"
            + "\"case\":{\"code\":\"P-1\",\"revision\":%d}}";
    var pages =
        visitor.ask(
            "POST", cast + "/prescription/pages", BodyPublishers.ofString(ask.formatted(on)));
    assertThat(new String(pages.body(), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    for (int revision = 1; revision <= 2; revision++) {
      var folder =
          visitor.ask(
              "POST", cast + "/prescription/folder", BodyPublishers.ofString(ask.formatted(on)));
      assertThat(folder.statusCode()).isEqualTo(200);
      Map<String, byte[]> files = unzipped(folder.body());
      assertThat(files)
          .containsKeys("prescription.pdf", "prescription.json", "plan.svg", "survey.csv")
          .anySatisfy((name, _) -> assertThat(name).startsWith("cast-at-path/"));
      JsonNode json = Json.read(new String(files.get("prescription.json"), StandardCharsets.UTF_8));
      assertThat(Schemas.errors("prescription", json)).isEmpty();
      assertThat(json.toString()).contains("P-1", "Dr A.");
      assertThat(json.get("revision").asInt()).isEqualTo(revision);
      JsonNode plan = Json.read(new String(files.get("plan.json"), StandardCharsets.UTF_8));
      assertThat(plan.get("majorConnector").get("kind").asText()).isEqualTo("palatal-plate");
      on = Integer.parseInt(folder.headers().firstValue("Case-Revision").orElseThrow());
      ask = ask.replace("Dr A.", "Dr A. and Dr A.");
    }
    JsonNode order = Json.read(ask.formatted(on).replace("prescriber", "mood"));
    assertThat(
            visitor
                .ask(
                    "POST", cast + "/prescription/pages", BodyPublishers.ofString(order.toString()))
                .statusCode())
        .isBetween(400, 422);
  }

  @Test
  void twoPlansAreHeldAgainstEachOther() throws IOException {
    String ask =
        "{\"plans\":[{\"name\":\"A\",\"choices\":{}},"
            + "{\"name\":\"B\",\"choices\":{\"connector\":\"palatal-plate\"}}]}";
    JsonNode json = visitor.json("POST", cast + "/plan/compare", ask, 200);
    assertThat(Schemas.errors("comparison", json)).isEmpty();
    assertThat(json.get("first").get("name").asText()).isEqualTo("A");
    JsonNode other = json.get("others").get(0);
    assertThat(other.get("name").asText()).isEqualTo("B");
    assertThat(other.get("against").get("parts").toString()).contains("major connector");
    assertThat(other.get("against").get("loads")).isNotEmpty();
    JsonNode same =
        visitor.json(
            "POST",
            cast + "/plan/compare",
            ask.replace("{\"connector\":\"palatal-plate\"}", "{}"),
            200);
    assertThat(same.get("others").get(0).get("against").get("parts")).isEmpty();
    for (JsonNode load : same.get("others").get(0).get("against").get("loads")) {
      assertThat(load.get("answer").asText()).isIn("alike", "hardly loaded in either");
    }
    for (String wrong : List.of("{}", "{\"plans\":[{\"name\":\"A\"}]}", "{\"plans\":7}")) {
      var answer = visitor.ask("POST", cast + "/plan/compare", BodyPublishers.ofString(wrong));
      assertThat(new String(answer.body(), StandardCharsets.UTF_8))
          .contains("request-unreadable", "two or three plans");
    }
  }

  @Test
  void thePreparedCastIsSurveyedBesideTheOneThatStands() throws IOException {
    JsonNode before = visitor.json("GET", cast, "", 200);
    JsonNode cut = visitor.json("POST", cast + "/plan/prepared", "{}", 200);
    assertThat(cut.get("id").asText()).isNotEqualTo(before.get("id").asText());
    assertThat(cut.get("frame")).isEqualTo(before.get("frame"));
    assertThat(cut.get("triangles")).isEqualTo(before.get("triangles"));
    // It is looked at beside the cast, and is none of the open ones.
    assertThat(visitor.json("GET", "/api/casts", "", 200).get("casts")).hasSize(1);
    String prepared = "/api/casts/" + cut.get("id").asText();
    assertThat(mesh(prepared).length).isEqualTo(mesh(cast).length);
    assertThat(mesh(prepared)).isNotEqualTo(mesh(cast));
    // A new frame of the cast makes it void.
    visitor.json("POST", cast + "/frame", "{\"jaw\":\"upper\"}", 200);
    var gone = visitor.ask("GET", prepared, BodyPublishers.noBody());
    assertThat(new String(gone.body(), StandardCharsets.UTF_8)).contains("cast-not-open");
    visitor.json("POST", cast + "/teeth", "{\"missing\":[14]}", 200);
  }

  private static byte[] mesh(String of) throws IOException {
    return visitor.ask("GET", of + "/mesh", BodyPublishers.noBody()).body();
  }

  private static Map<String, byte[]> unzipped(byte[] zip) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        files.put(e.getName(), in.readAllBytes());
      }
    }
    return files;
  }

  @Test
  void whatCannotBePlannedIsRefusedByName() throws IOException {
    assertThat(refused("{\"choices\":{\"clasps\":{\"14\":\"none\"}}}")).contains("tooth");
    assertThat(refused("{\"choices\":{\"connector\":\"lingual-bar\"}}")).isNotBlank();
    assertThat(refused("{\"choices\":{\"moods\":{}}}")).isEqualTo("choices-unusable");
    assertThat(refused("{\"answers\":{\"mood\":\"good\"}}")).isEqualTo("answer-wrong");
    assertThat(refused("{\"tilt\":[90,0]}")).isEqualTo("request-unreadable");
  }

  private static List<Integer> teeth(JsonNode parts) {
    List<Integer> teeth = new ArrayList<>();
    parts.forEach(p -> teeth.add(p.get("tooth").asInt()));
    return teeth;
  }
}
