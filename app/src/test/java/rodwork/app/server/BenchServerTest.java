package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.SphereCast;
import rodwork.app.report.Schemas;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;

/** A real server on a free port, spoken to as the bench does, with a sphere as the cast. */
class BenchServerTest {
  private static final int LARGEST_UPLOAD = 4 << 20;
  private static final TriangleMesh MESH = SphereCast.MESH;
  private static final double R = SphereCast.RADIUS_MM;

  @TempDir Path bench;
  private BenchServer server;
  private Visitor visitor;

  @BeforeEach
  void start() throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    server =
        BenchServer.start(new BenchServer.Settings(bench, "127.0.0.1", 0, LARGEST_UPLOAD, bench));
    visitor = new Visitor(server);
  }

  @AfterEach
  void stop() {
    visitor.close();
    server.close();
  }

  private String open() throws IOException {
    byte[] content = Files.readAllBytes(SphereCast.in(bench));
    JsonNode info = visitor.json("POST", "/api/casts?name=sphere.ply&jaw=lower", content, 201);
    String id = info.get("id").asText();
    JsonNode turned =
        visitor.json(
            "POST",
            "/api/casts/" + id + "/frame",
            "{\"jaw\":\"lower\",\"up\":[0,0,2],\"front\":[0,1,0]}",
            200);
    assertThat(turned.get("frame").get("z").get(2).asDouble()).isEqualTo(1);
    return id;
  }

  private static String survey(long seq, double anterior, double right) {
    return "{\"kind\":\"survey\",\"seq\":%d,\"tilt\":[%s,%s],\"gauges\":[0.25,0.5,0.75]}"
        .formatted(seq, anterior, right);
  }

  @Test
  void aCastIsOpenedListedAndClosed() throws IOException {
    String id = open();
    JsonNode info = visitor.json("GET", "/api/casts/" + id, "", 200);
    assertThat(info.get("vertices").asInt()).isEqualTo(MESH.vertexCount());
    assertThat(info.get("jaw").asText()).isEqualTo("lower");
    assertThat(info.get("frameProblem").isNull()).isTrue();
    assertThat(info.get("intakeLines")).isNotEmpty();
    JsonNode list = visitor.json("GET", "/api/casts", "", 200);
    assertThat(list.get("casts").get(0).get("id").asText()).isEqualTo(id);
    assertThat(visitor.ask("DELETE", "/api/casts/" + id, BodyPublishers.noBody()).statusCode())
        .isEqualTo(204);
    JsonNode gone = visitor.json("GET", "/api/casts/" + id, "", 404);
    assertThat(gone.get("code").asText()).isEqualTo("cast-not-open");
  }

  @Test
  void thePageOfRulesIsThereForThoseWithTheToken() throws IOException, InterruptedException {
    var answer = visitor.ask("GET", "/help/rules", BodyPublishers.noBody());
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElseThrow())
        .isEqualToIgnoringWhitespace("text/html;charset=utf-8");
    String page = new String(answer.body(), java.nio.charset.StandardCharsets.UTF_8);
    assertThat(page).contains("Formulas and rules", "undercut-cap", "own choice");
    String tutorial =
        new String(
            visitor.ask("GET", "/help/tutorial", BodyPublishers.noBody()).body(),
            java.nio.charset.StandardCharsets.UTF_8);
    assertThat(tutorial).contains("Ten minutes", "decides and signs").doesNotContain("{{");
    // Nothing on them is fetched from anywhere.
    assertThat(page + tutorial).doesNotContain("http://", "https://", "<script", "<link", "url(");
    var stranger =
        java.net.http.HttpClient.newHttpClient()
            .send(
                java.net.http.HttpRequest.newBuilder(
                        java.net.URI.create("http://127.0.0.1:" + server.port() + "/help/rules"))
                    .build(),
                java.net.http.HttpResponse.BodyHandlers.ofString());
    assertThat(stranger.statusCode()).isEqualTo(401);
    assertThat(stranger.body()).doesNotContain("undercut-cap");
  }

  @Test
  void aSphereHasNoFrameOfItsOwnAndSaysWhy() throws IOException {
    byte[] content = Files.readAllBytes(SphereCast.in(bench));
    JsonNode info = visitor.json("POST", "/api/casts?name=sphere.ply", content, 201);
    assertThat(info.get("frame").isNull()).isTrue();
    assertThat(info.get("frameProblem").get("advice").asText()).isNotEmpty();
    String id = info.get("id").asText();
    try (Visitor.Talk talk = visitor.talk(id, server.token())) {
      talk.say(survey(1, 0, 0));
      assertThat(talk.hearText().get("problem").get("code"))
          .isEqualTo(info.get("frameProblem").get("code"));
    }
  }

  @Test
  void theMeshComesAsTheProtocolSays() throws IOException {
    String id = open();
    byte[] bytes = visitor.ask("GET", "/api/casts/" + id + "/mesh", BodyPublishers.noBody()).body();
    ByteBuffer mesh = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int vertices = MESH.vertexCount();
    int triangles = MESH.triangleCount();
    assertThat(mesh.getInt()).isEqualTo(0x314D5752);
    assertThat(mesh.getInt()).isEqualTo(vertices);
    assertThat(mesh.getInt()).isEqualTo(triangles);
    assertThat(bytes).hasSize(16 + 12 * vertices + 13 * triangles);
    assertThat((double) mesh.getFloat(16 + 12 * 7 + 4)).isCloseTo(MESH.y(7), within(1e-5));
    assertThat(mesh.getInt(16 + 12 * vertices + 12 * 5 + 8)).isEqualTo(MESH.corner(5, 2));
  }

  @Test
  void aSurveyIsTheClosedFormOfTheSphere() throws IOException {
    try (Visitor.Talk talk = visitor.talk(open(), server.token())) {
      talk.say(survey(1, 0, 0));
      Visitor.Frame frame = talk.hearFrame();
      assertThat(frame.seq()).isEqualTo(1);
      assertThat(frame.head().get("exact").asBoolean()).isTrue();
      for (int v = 0; v < MESH.vertexCount(); v++) {
        double rho = Math.hypot(MESH.x(v), MESH.y(v));
        double expected = MESH.z(v) < 0 ? Math.min(4, R - rho) : 0;
        assertThat((double) frame.depth()[v]).isCloseTo(expected, within(3 * SphereCast.SAG_MM));
      }
      JsonNode curves = frame.head().get("curves");
      JsonNode mark = curves.get(curves.size() - 1);
      assertThat(mark.get("kind").asText()).isEqualTo("mark");
      int from = 3 * mark.get("from").asInt();
      double rho = Math.hypot(frame.points()[from], frame.points()[from + 1]);
      assertThat(rho).isCloseTo(R - mark.get("gaugeMm").asDouble(), within(2 * SphereCast.SAG_MM));
    }
  }

  @Test
  void aThinnedSurveyIsTheSameSphereWithFewerVertices() throws IOException {
    String id = open();
    byte[] bytes =
        visitor
            .ask("GET", "/api/casts/" + id + "/mesh?thinned=true", BodyPublishers.noBody())
            .body();
    ByteBuffer mesh = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int vertices = mesh.getInt(4);
    assertThat(vertices).isBetween(100, MESH.vertexCount() - 500);
    try (Visitor.Talk talk = visitor.talk(id, server.token())) {
      talk.say(survey(1, 0, 0).replace("{", "{\"thinned\":true,"));
      Visitor.Frame frame = talk.hearFrame();
      assertThat(frame.head().get("exact").asBoolean()).isFalse();
      assertThat(frame.head().get("flags").asInt()).isZero();
      assertThat(frame.depth()).hasSize(vertices);
      double worst = 0;
      for (int v = 0; v < vertices; v++) {
        double rho = Math.hypot(mesh.getFloat(16 + 12 * v), mesh.getFloat(20 + 12 * v));
        double z = mesh.getFloat(24 + 12 * v);
        // Near the equator a facet of the thinned sphere hides what its own chord leaves out.
        if (Math.abs(z) > 0.6) {
          double expected = z < 0 ? Math.min(4, R - rho) : 0;
          worst = Math.max(worst, Math.abs(frame.depth()[v] - expected));
        }
      }
      assertThat(worst).isLessThan(0.06);
      // What is read comes from the whole cast: the closed form to its own accuracy.
      double z = -R / 2;
      double rho = Math.sqrt(R * R - z * z);
      int triangle = 0;
      String place = "\"point\":[%s,0,%s],\"triangle\":%d".formatted(rho, z, triangle);
      talk.say("{\"kind\":\"read\",\"seq\":2," + place + ",\"gauge\":null}");
      assertThat(talk.hearText().get("reading").get("depthMm").asDouble())
          .isCloseTo(R - rho, within(3 * SphereCast.SAG_MM));
    }
  }

  @Test
  void aPlaceIsReadSeatedAndDrawn() throws IOException {
    int triangle = 0;
    for (int t = 0; t < MESH.triangleCount(); t++) {
      double z = MESH.pointOn(t, 1.0 / 3, 1.0 / 3).z();
      if (z < -4.5 && z > -5.5) {
        triangle = t;
      }
    }
    var at = MESH.pointOn(triangle, 1.0 / 3, 1.0 / 3);
    double expected = R - Math.hypot(at.x(), at.y());
    String place =
        "\"point\":[%s,%s,%s],\"triangle\":%d".formatted(at.x(), at.y(), at.z(), triangle);
    try (Visitor.Talk talk = visitor.talk(open(), server.token())) {
      talk.say("{\"kind\":\"read\",\"seq\":1," + place + ",\"gauge\":null}");
      assertThat(talk.hearText().get("problem").get("code").asText()).isEqualTo("no-field-yet");
      talk.say(survey(2, 0, 0));
      talk.hearFrame();
      talk.say("{\"kind\":\"read\",\"seq\":3," + place + ",\"gauge\":0.25}");
      JsonNode reading = talk.hearText().get("reading");
      assertThat(reading.get("depthMm").asDouble())
          .isCloseTo(expected, within(3 * SphereCast.SAG_MM));
      assertThat(reading.get("belowSurveyLineMm").asDouble()).isCloseTo(-at.z(), within(0.2));
      talk.say("{\"kind\":\"seat\",\"seq\":4," + place + ",\"gauge\":0.25}");
      JsonNode seat = talk.hearText().get("place");
      assertThat(seat.get("depthMm").asDouble()).isCloseTo(0.25, within(0.03));
      talk.say("{\"kind\":\"profile\",\"seq\":5," + place + ",\"gauge\":0.25}");
      JsonNode profile = talk.hearText().get("profile");
      assertThat(profile.get("depthMm").asDouble())
          .isCloseTo(expected, within(3 * SphereCast.SAG_MM));
      assertThat(profile.get("polylines")).isNotEmpty();
      assertThat(profile.get("gauge").get("mm").asDouble()).isEqualTo(0.25);
    }
  }

  @Test
  void theClassFollowsWhatIsSaidMissingAndTeethThatCannotBeToldAreNoFault() throws IOException {
    String cast = "/api/casts/" + open();
    String teeth = cast + "/teeth";
    JsonNode info = visitor.json("POST", teeth, "{\"missing\":[36,37,46]}", 200);
    assertThat(info.get("teeth")).isEmpty();
    assertThat(info.get("problem").get("advice").asText()).isNotEmpty();
    // Kennedy, by hand: 36 and 37 missing behind 35, a free end on one side; 46 bounded besides.
    assertThat(info.get("kennedy").get("title").asText()).isEqualTo("class II modification 1");
    assertThat(info.get("kennedy").get("reasons")).isNotEmpty();
    byte[] labels = visitor.ask("GET", teeth + "/labels", BodyPublishers.noBody()).body();
    assertThat(labels).hasSize(MESH.triangleCount()).containsOnly(0);
    JsonNode frame = visitor.json("GET", cast, "", 200).get("frame");
    double[] front = new double[3];
    for (int k = 0; k < 3; k++) {
      front[k] = frame.get("origin").get(k).asDouble() + 20 * frame.get("y").get(k).asDouble();
    }
    String point = "{\"point\":[%s,%s,%s]}".formatted(front[0], front[1], front[2]);
    int offered = visitor.json("POST", teeth + "/number", point, 200).get("tooth").asInt();
    assertThat(offered % 10).isLessThan(3); // at the front of the arch stands an incisor
    for (String bad :
        new String[] {
          "{\"missing\":[16]}",
          "{\"missing\":[39]}",
          "{\"missing\":[36],\"points\":[{\"tooth\":36,\"point\":[0,0,10]}]}",
          "{\"points\":[{\"tooth\":36,\"point\":[0,0]}]}"
        }) {
      assertThat(visitor.json("POST", teeth, bad, 400).get("code").asText())
          .as(bad)
          .isEqualTo("request-unreadable");
    }
  }

  @Test
  void aStripWithoutTeethIsEmptyAndOneWithoutTiltIsRefused() throws IOException {
    try (Visitor.Talk talk = visitor.talk(open(), server.token())) {
      talk.say("{\"kind\":\"strip\",\"seq\":1,\"tilt\":[2,0]}");
      JsonNode said = talk.hearText();
      assertThat(said.get("kind").asText()).isEqualTo("strip");
      assertThat(said.get("strip")).isEmpty();
      talk.say("{\"kind\":\"strip\",\"seq\":2}");
      assertThat(talk.hearText().get("problem").get("code").asText())
          .isEqualTo("request-unreadable");
    }
  }

  @Test
  void abutmentsAreJudgedOnceTeethAreKnown() throws IOException {
    byte[] scan = Files.readAllBytes(Shared.file("arches/upper-17-27.ply"));
    String id =
        visitor.json("POST", "/api/casts?name=a.ply&jaw=upper", scan, 201).get("id").asText();
    String cast = "/api/casts/" + id;
    String early =
        new String(
            visitor.ask("POST", cast + "/abutments", BodyPublishers.ofString("{}")).body(),
            StandardCharsets.UTF_8);
    assertThat(early).contains("abutments-need-teeth");
    visitor.json("POST", cast + "/teeth", "{\"missing\":[17,27]}", 200);
    JsonNode json =
        visitor.json(
            "POST", cast + "/abutments", "{\"tilt\":[2,0],\"answers\":{\"mobile\":\"no\"}}", 200);
    assertThat(Schemas.errors("abutments", json)).isEmpty();
    assertThat(json.get("tilt").get("anteriorDeg").asDouble()).isEqualTo(2);
    assertThat(json.get("abutments")).hasSize(2);
    assertThat(json.get("abutments").get(0).get("couldReorder").toString())
        .doesNotContain("mobile");
    for (String bad : new String[] {"{\"answers\":{\"mood\":\"good\"}}", "{\"teeth\":[99]}"}) {
      assertThat(
              visitor.ask("POST", cast + "/abutments", BodyPublishers.ofString(bad)).statusCode())
          .as(bad)
          .isBetween(400, 422);
    }
  }

  @Test
  void theChartIsTakenWithTheTeethAndAQuestionIsAnsweredByIt() throws IOException {
    String teeth = "/api/casts/" + open() + "/teeth";
    // Applegate's rule 4, by hand: 37 missing behind 36 counts only if it is to be replaced.
    JsonNode asked = visitor.json("POST", teeth, "{\"missing\":[37]}", 200).get("kennedy");
    assertThat(asked.get("title").asText()).isEqualTo("class II");
    JsonNode question = asked.get("questions").get(0);
    assertThat(question.get("asks").asText()).isEqualTo("replaced");
    assertThat(question.get("places").toString()).isEqualTo("[37]");
    assertThat(question.get("otherwise").asText()).isEqualTo("no space");
    String chart =
        "{\"missing\":[37],\"chart\":{\"format\":\"rodwork chart\",\"version\":1,\"jaw\":\"lower\","
            + "\"teeth\":[{\"tooth\":37,\"presence\":\"missing\",\"replace\":\"no\"},"
            + "{\"tooth\":45,\"presence\":\"to be extracted\",\"mobility\":\"III\"}]}}";
    JsonNode answered = visitor.json("POST", teeth, chart, 200).get("kennedy");
    // Rule 2: 45 counts as gone; 37 is left out.
    assertThat(answered.get("title").asText()).isEqualTo("class III");
    String slip = chart.replace("mobility", "mobilty");
    JsonNode refused = visitor.json("POST", teeth, slip, 422);
    assertThat(refused.get("code").asText()).isEqualTo("chart-wrong");
    assertThat(refused.get("message").asText()).contains("mobilty");
  }

  @Test
  void theNewestTiltWins() throws IOException {
    int asked = 40;
    try (Visitor.Talk talk = visitor.talk(open(), server.token())) {
      for (int seq = 1; seq <= asked; seq++) {
        talk.say(survey(seq, seq * 0.1, 0));
      }
      long last = 0;
      int answers = 0;
      while (last < asked) {
        Visitor.Frame frame = talk.hearFrame();
        assertThat(frame.seq()).isGreaterThan(last);
        last = frame.seq();
        assertThat(frame.head().get("tilt").get(0).asDouble()).isCloseTo(last * 0.1, within(1e-9));
        answers++;
      }
      assertThat(answers).isLessThan(asked);
    }
  }

  @Test
  void badMessagesAreToldAndHarmNothing() throws IOException {
    try (Visitor.Talk talk = visitor.talk(open(), server.token())) {
      for (String bad :
          new String[] {
            "no json",
            "{\"kind\":\"dance\",\"seq\":1}",
            "{\"kind\":\"survey\",\"seq\":1,\"tilt\":[80,0],\"gauges\":[0.25]}",
            "{\"kind\":\"survey\",\"seq\":1,\"tilt\":[0,0],\"gauges\":[]}",
            "{\"kind\":\"survey\",\"tilt\":[0,0],\"gauges\":[0.25]}"
          }) {
        talk.say(bad);
        assertThat(talk.hearText().get("problem").get("code").asText())
            .as(bad)
            .isEqualTo("request-unreadable");
      }
      talk.say(survey(9, 1, 1));
      assertThat(talk.hearFrame().seq()).isEqualTo(9);
      talk.say("{\"kind\":\"read\",\"seq\":10,\"point\":[0,0,0],\"triangle\":-1,\"gauge\":null}");
      assertThat(talk.hearText().get("problem").get("message").asText())
          .contains("triangle is -1, not within 0 to " + (MESH.triangleCount() - 1));
    }
  }

  @Test
  void aSocketNeedsTheTokenAndAnOpenCast() throws IOException {
    String id = open();
    assertThatThrownBy(() -> visitor.talk(id, "x")).hasMessageContaining("WebSocketHandshake");
    assertThatThrownBy(() -> visitor.talk("nothing", server.token()))
        .hasMessageContaining("WebSocketHandshake");
  }

  @Test
  void aBrokenScanIsRefusedWithCodeAndAdvice() throws IOException {
    JsonNode problem = visitor.json("POST", "/api/casts?name=..%2Fx.stl", "not a mesh", 422);
    assertThat(problem.get("message").asText()).startsWith("x.stl: ");
    assertThat(problem.get("advice").asText()).isNotEmpty();
    assertThat(visitor.json("POST", "/api/casts?name=x.stl", "", 422).get("code").asText())
        .isEqualTo("upload-empty");
    assertThat(visitor.json("GET", "/api/casts", "", 200).get("casts")).isEmpty();
  }

  @Test
  void aScanThatIsTooBigIsRefusedAnnouncedOrNot() throws IOException {
    byte[] content = new byte[LARGEST_UPLOAD + 1];
    JsonNode problem = visitor.json("POST", "/api/casts?name=big.stl", content, 413);
    assertThat(problem.get("message").asText())
        .isEqualTo("big.stl is larger than the 4 MiB that the bench takes at a time.");
    var streamed =
        visitor.ask(
            "POST",
            "/api/casts?name=big.stl",
            BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(content)));
    assertThat(streamed.statusCode()).isEqualTo(413);
    assertThat(new String(streamed.body(), StandardCharsets.UTF_8)).contains("upload-too-big");
  }

  @Test
  void theShelfIsNotEndless() throws IOException {
    byte[] content = Files.readAllBytes(SphereCast.in(bench));
    for (int i = 0; i < Shelf.MOST; i++) {
      visitor.json("POST", "/api/casts?name=sphere.ply", content, 201);
    }
    JsonNode problem = visitor.json("POST", "/api/casts?name=sphere.ply", content, 409);
    assertThat(problem.get("code").asText()).isEqualTo("too-many-casts");
  }

  @Test
  void aTakenPortIsSaid() {
    assertThatThrownBy(
            () ->
                BenchServer.start(BenchServer.Settings.of(bench, null, server.port(), bench))
                    .close())
        .hasMessageStartingWith("Nothing can listen at 127.0.0.1 port " + server.port());
  }
}
