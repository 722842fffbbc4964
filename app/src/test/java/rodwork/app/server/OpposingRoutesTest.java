package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.SphereCast;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;

/** The opposing scan and the occlusal plane over HTTP: a level sheet over a sphere, a real arch. */
class OpposingRoutesTest {
  private static final TriangleMesh MESH = SphereCast.MESH;
  private static final double SHEET_MM = 25;

  @TempDir Path bench;
  private BenchServer server;
  private Visitor visitor;

  @BeforeEach
  void start() throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    server = BenchServer.start(new BenchServer.Settings(bench, "127.0.0.1", 0, 64 << 20, bench));
    visitor = new Visitor(server);
  }

  @AfterEach
  void stop() {
    visitor.close();
    server.close();
  }

  @Test
  void theRoomToASheetOverASphere() throws IOException {
    String sphere = open("sphere.ply", Files.readAllBytes(SphereCast.in(bench)));
    frame(sphere, "[0,0,2]");
    String sheet = open("sheet.off", sheet());
    String path = "/api/casts/" + sphere + "/opposing";
    assertThat(visitor.json("GET", path, "", 200).get("opposing").isNull()).isTrue();

    JsonNode laid =
        visitor.json("POST", path, "{\"opposing\":\"" + sheet + "\"}", 200).get("opposing");
    assertThat(laid.get("id").asText()).isEqualTo(sheet);
    assertThat(laid.get("bite").isNull()).isTrue();
    assertThat(laid.get("coveredShare").asDouble()).isEqualTo(1);
    float[] room = room(path);
    for (int v = 0; v < room.length; v++) {
      double truth = SHEET_MM - MESH.z(v);
      if (truth < 29.9) {
        assertThat((double) room[v]).isCloseTo(truth, within(1e-4));
      }
    }
    try (Visitor.Talk talk = visitor.talk(sphere, server.token())) {
      talk.say("{\"kind\":\"survey\",\"seq\":1,\"tilt\":[0,0],\"gauges\":[0.25,0.5,0.75]}");
      talk.hearFrame();
      int t = 0;
      var at = MESH.pointOn(t, 1 / 3.0, 1 / 3.0);
      talk.say(
          "{\"kind\":\"read\",\"seq\":2,\"point\":[%s,%s,%s],\"triangle\":%d,\"gauge\":null}"
              .formatted(at.x(), at.y(), at.z(), t));
      JsonNode reading = talk.hearText().get("reading");
      double truth = SHEET_MM - at.z();
      if (truth < 29.9) {
        assertThat(reading.get("clearanceMm").asDouble()).isCloseTo(truth, within(1e-3));
      } else {
        assertThat(reading.get("clearanceMm").isNull()).isTrue();
      }
    }
    frame(sphere, "[0,0,-1]");
    for (float none : room(path)) {
      assertThat(none).as("turned over, nothing opposes").isNaN();
    }
    visitor.json("POST", path, "{\"opposing\":null}", 200);
    assertThat(visitor.json("GET", path, "", 200).get("opposing").isNull()).isTrue();
    JsonNode same = visitor.json("POST", path, "{\"opposing\":\"" + sphere + "\"}", 422);
    assertThat(same.get("code").asText()).isEqualTo("opposing-is-cast");
    JsonNode gone = visitor.json("POST", path, "{\"opposing\":\"cast-99\"}", 404);
    assertThat(gone.get("code").asText()).isEqualTo("cast-not-open");
  }

  @Test
  void theOcclusalPlaneIsOfferedAndTaken() throws IOException {
    byte[] scan = Files.readAllBytes(Shared.file("arches/lower-35.ply"));
    String id = open("lower-35.ply", scan);
    visitor.json("POST", "/api/casts/" + id + "/frame", "{\"jaw\":\"lower\"}", 200);
    String plane = "/api/casts/" + id + "/teeth/plane";
    assertThat(visitor.json("POST", plane, "{}", 422).get("code").asText())
        .isEqualTo("plane-needs-teeth");
    visitor.json("POST", "/api/casts/" + id + "/teeth", "{\"missing\":[35]}", 200);
    JsonNode offer = visitor.json("POST", plane, "{}", 200);
    assertThat(offer.get("used").asInt()).isBetween(8, offer.get("teeth").asInt());
    double least =
        Math.max(offer.get("anteriorErrorDeg").asDouble(), offer.get("rightErrorDeg").asDouble());
    assertThat(offer.get("ask").asBoolean()).as(offer.toString()).isEqualTo(least > 3);

    JsonNode taken =
        visitor.json(
            "POST",
            "/api/casts/" + id + "/frame",
            "{\"jaw\":\"lower\",\"up\":%s,\"front\":%s,\"upUncertaintyDeg\":%s}"
                .formatted(offer.get("up"), offer.get("front"), offer.get("anteriorErrorDeg")),
            200);
    assertThat(taken.get("frame").get("upUncertaintyDeg").asDouble())
        .isCloseTo(offer.get("anteriorErrorDeg").asDouble(), within(1e-3));
    visitor.json("POST", "/api/casts/" + id + "/teeth", "{\"missing\":[35]}", 200);
    JsonNode again = visitor.json("POST", plane, "{}", 200);
    // The plane over the teeth is that of the teeth, whatever frame it was asked from.
    assertThat(again.get("anteriorDeg").asDouble()).isCloseTo(0, within(0.5));
    assertThat(again.get("rightDeg").asDouble()).isCloseTo(0, within(0.5));

    JsonNode line = visitor.json("POST", plane, "{\"points\":[[0,0,0],[9,0,0],[30,0.5,0]]}", 422);
    assertThat(line.get("code").asText()).isEqualTo("occlusal-plane-points-in-line");
    JsonNode two = visitor.json("POST", plane, "{\"points\":[[0,0,0],[9,0,0]]}", 400);
    assertThat(two.get("code").asText()).isEqualTo("request-unreadable");
  }

  private float[] room(String path) throws IOException {
    byte[] bytes = visitor.ask("GET", path + "/clearance", BodyPublishers.noBody()).body();
    float[] room = new float[bytes.length / 4];
    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().get(room);
    return room;
  }

  private void frame(String id, String up) throws IOException {
    visitor.json(
        "POST",
        "/api/casts/" + id + "/frame",
        "{\"jaw\":\"lower\",\"up\":" + up + ",\"front\":[0,1,0]}",
        200);
  }

  private String open(String name, byte[] content) throws IOException {
    return visitor.json("POST", "/api/casts?name=" + name, content, 201).get("id").asText();
  }

  private static byte[] sheet() {
    return SphereCast.sheet(SHEET_MM);
  }
}
