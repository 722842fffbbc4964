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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.occlusion.Clearance;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.app.SphereCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.report.Json;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Watch;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
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

  /** A plan goes by what lies over the cast, and so does a search that goes by a plan. */
  @Test
  void aSearchByAPlanIsMadeReadyAnewForAnotherOpposingScan() throws IOException {
    Shelf shelf = new Shelf(Rulebook.shipped());
    byte[] arch = Files.readAllBytes(Shared.file("arches/upper-14.ply"));
    CastOptions upper = new CastOptions(Jaw.UPPER, FrameHints.NONE, Optional.empty());
    OpenedCast opened = OpenCast.of(arch, "a.ply", upper, Watch.NONE);
    String id = shelf.add(opened, Scan.of("a.ply", arch, Optional.empty()));
    OpenedCast cast = shelf.get(id);
    ToothHints hints = new ToothHints(Set.of(14), List.of());
    shelf.setTeeth(id, FoundTeeth.of(cast, hints, Chart.blank(Jaw.UPPER), null, Watch.NONE));
    JsonNode plan = Json.read("{\"plan\":{\"tilt\":[0,0]}}");
    JsonNode anatomy = Json.read("{\"leftOut\":[\"palate\"]}");
    PathRoutes.Key without = PathRoutes.Key.of(shelf, id, plan);
    PathRoutes.Key anatomyWithout = PathRoutes.Key.of(shelf, id, anatomy);
    assertThat(PathRoutes.Key.of(shelf, id, Json.read(plan.toString()))).isEqualTo(without);

    Arch under = shelf.known(id, AppRefusal.PATH_NEEDS_TEETH).arch();
    Clearance room = Clearance.of(under, MESH, RigidMotion.NONE);
    shelf.setOpposing(
        id, cast, new LaidOpposing("cast-9", null, new OpposingScan("a sphere", null, room, 1)));
    assertThat(PathRoutes.Key.of(shelf, id, plan)).isNotEqualTo(without);
    assertThat(PathRoutes.Key.of(shelf, id, anatomy)).isEqualTo(anatomyWithout);
  }

  @Test
  void oneFileReadInAnotherUnitOrAsAnotherJawIsAnotherCast() throws IOException {
    byte[] sphere = Files.readAllBytes(SphereCast.in(bench));
    OpenedCast found = read(sphere, Jaw.UNKNOWN, LengthUnit.MILLIMETRE);
    assertThat(read(sphere, Jaw.UNKNOWN, LengthUnit.MILLIMETRE).readAs(found)).isTrue();
    assertThat(read(sphere, Jaw.UNKNOWN, LengthUnit.CENTIMETRE).readAs(found)).isFalse();
    assertThat(read(sphere, Jaw.LOWER, LengthUnit.MILLIMETRE).readAs(found)).isFalse();
  }

  private static OpenedCast read(byte[] file, Jaw jaw, LengthUnit unit) {
    CastOptions options = new CastOptions(jaw, FrameHints.NONE, Optional.of(unit));
    return OpenCast.of(file, "sphere.ply", options, Watch.NONE);
  }

  /** What a case keeps and cannot be laid is told by its name, so that it can be taken away. */
  @Test
  void aScanThatIsKeptAndNotLaidIsToldAndTakenAway() throws IOException {
    String sphere = open("sphere.ply", Files.readAllBytes(SphereCast.in(bench)));
    frame(sphere, "[0,0,2]");
    String path = "/api/casts/" + sphere + "/opposing";
    assertThat(visitor.json("GET", path, "", 200).get("kept").isNull()).isTrue();
    String sheet = open("sheet.off", sheet());
    visitor.json("POST", path, "{\"opposing\":\"" + sheet + "\"}", 200);
    // A sphere has no frame of its own: without one nothing can lie over it.
    visitor.json("POST", "/api/casts/" + sphere + "/frame", "{\"jaw\":null}", 200);
    JsonNode told = visitor.json("GET", path, "", 200);
    assertThat(told.get("opposing").isNull()).isTrue();
    assertThat(told.get("kept").asText()).isEqualTo("sheet.off");
    assertThat(visitor.json("POST", path, "{\"opposing\":null}", 200).get("kept").isNull())
        .isTrue();
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
