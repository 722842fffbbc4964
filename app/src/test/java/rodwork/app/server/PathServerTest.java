package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** Search and tripod over the server, on a real arch and a turned copy of it. */
class PathServerTest {
  private static final String ARCH = "arches/upper-16-23.ply";
  private static final RigidMotion MOTION =
      RigidMotion.shift(new Vec3(14, 60, -9))
          .after(RigidMotion.turn(new Vec3(0.2, 0.9, -0.4), Math.toRadians(104)));

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

  private String open(Path file) throws IOException {
    byte[] content = Files.readAllBytes(file);
    String path = "/api/casts?name=" + file.getFileName() + "&jaw=upper";
    return "/api/casts/" + visitor.json("POST", path, content, 201).get("id").asText();
  }

  private String openTurned() throws IOException {
    TriangleMesh mesh = MeshFiles.read(Shared.file(ARCH), Watch.NONE).toMesh();
    Path file = bench.resolve("again.ply");
    MeshFiles.write(file, Reshape.each(mesh, MOTION::point), Watch.NONE);
    return open(file);
  }

  private static Vec3 vector(JsonNode json) {
    return new Vec3(json.get(0).asDouble(), json.get(1).asDouble(), json.get(2).asDouble());
  }

  @Test
  void aSearchTellsACoarseMapThenItsProgressThenAll() throws IOException {
    String cast = open(Shared.file(ARCH));
    assertThat(visitor.json("POST", cast + "/path", "{}", 422).get("code").asText())
        .isEqualTo("path-needs-teeth");
    visitor.json("POST", cast + "/teeth", "{\"missing\":[16,23]}", 200);
    HttpResponse<byte[]> answer =
        visitor.ask("POST", cast + "/path", BodyPublishers.ofString("{}"));
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/x-ndjson");
    List<JsonNode> lines = new ArrayList<>();
    for (String line : new String(answer.body(), StandardCharsets.UTF_8).split("\n", -1)) {
      if (!line.isEmpty()) {
        lines.add(Json.read(line));
      }
    }
    List<String> kinds = lines.stream().map(line -> line.fieldNames().next()).toList();
    assertThat(kinds).contains("progress").containsOnlyOnce("coarse").containsOnlyOnce("found");
    assertThat(kinds.getLast()).isEqualTo("found");
    JsonNode coarse = lines.get(kinds.indexOf("coarse")).get("coarse");
    assertThat(coarse.get("tilts").size()).isBetween(20, 40);
    JsonNode found = lines.getLast().get("found");
    assertThat(found.get("map").get("tilts")).hasSizeGreaterThan(1000);
    // Tilt, the whole worth, five worths, five figures: the last is the total tilt.
    for (JsonNode tilt : found.get("map").get("tilts")) {
      assertThat(tilt).hasSize(13);
      assertThat(tilt.get(12).asDouble()).isBetween(0.0, 15.001);
    }
    JsonNode best = found.get("best").get("tilt");
    String compare =
        "{\"from\":[0,0],\"to\":[%s,%s]}"
            .formatted(best.get("anteriorDeg").asDouble(), best.get("rightDeg").asDouble());
    JsonNode sideBySide = visitor.json("POST", cast + "/path/compare", compare, 200);
    assertThat(sideBySide.get("rows")).isNotEmpty();
    assertThat(kindsInTheWay(sideBySide)).containsExactly("base", "facial strip", "palate");
  }

  @Test
  void whatCountsAsInTheWayIsAPersonsChoiceAndGivesWayToAPlan() throws IOException {
    String cast = open(Shared.file("arches/upper-14.ply")); // its palate was scanned
    visitor.json("POST", cast + "/teeth", "{\"missing\":[14]}", 200);
    String compare = "{\"from\":[0,0],\"to\":[2,1],\"inTheWay\":%s}";
    JsonNode without =
        visitor.json(
            "POST",
            cast + "/path/compare",
            compare.formatted("{\"leftOut\":[\"palate\",\"facial-strip\"]}"),
            200);
    assertThat(kindsInTheWay(without)).containsExactly("base");
    JsonNode planned =
        visitor.json(
            "POST",
            cast + "/path/compare",
            compare.formatted(
                "{\"leftOut\":[\"bar-arm\"],\"plan\":{\"tilt\":[0,0],\"choices\":{}}}"),
            200);
    assertThat(kindsInTheWay(planned)).containsExactly("base", "major connector");
    JsonNode wrong =
        visitor.json("POST", cast + "/path", "{\"inTheWay\":{\"leftOut\":[\"roof\"]}}", 400);
    assertThat(wrong.get("message").asText()).contains("\"roof\"");
  }

  private static SortedSet<String> kindsInTheWay(JsonNode compared) {
    SortedSet<String> kinds = new TreeSet<>();
    compared.get("to").get("zones").forEach(zone -> kinds.add(zone.get("kind").asText()));
    return kinds;
  }

  @Test
  void oneWhoGoesAwayStopsTheSearch() {
    SearchLines lines =
        new SearchLines(
            new OutputStream() {
              @Override
              public void write(int one) throws IOException {
                throw new IOException("the browser has gone");
              }
            });
    assertThat(lines.cancelled()).isFalse();
    lines.progress("trying tilts", 0.1);
    assertThat(lines.cancelled()).isTrue();
  }

  @Test
  void tripodMarksGiveThePathBackOnATurnedScan() throws IOException {
    String first = open(Shared.file(ARCH));
    ObjectNode tripod =
        (ObjectNode) visitor.json("POST", first + "/tripod", "{\"tilt\":[4,-3]}", 200);
    assertThat(Schemas.errors("tripod", tripod)).isEmpty();
    Vec3 axis = vector(tripod.get("axis"));
    assertThat(tripod.get("tilt").get("rightDeg").asDouble()).isCloseTo(-3, within(1e-3));

    // A mark is moved along its level, and to no place that has none.
    Vec3 mark = vector(tripod.get("marks").get(0).get("point"));
    JsonNode moved = move(first, tripod, mark.plus(new Vec3(1, 1, 0)), 200);
    Vec3 there = vector(moved.get("marks").get(0).get("point"));
    assertThat(there.dot(axis)).isCloseTo(tripod.get("heightMm").asDouble(), within(1e-3));
    assertThat(move(first, tripod, mark.plus(new Vec3(400, 0, 0)), 422).get("code").asText())
        .isEqualTo("tripod-mark-no-level");

    String again = openTurned();
    ObjectNode picked = Json.object();
    picked.set("tripod", tripod);
    ArrayNode points = picked.putArray("points");
    for (int which : new int[] {2, 0, 1}) {
      points.add(Json.point(MOTION.point(vector(tripod.get("marks").get(which).get("point")))));
    }
    JsonNode recovered = visitor.json("POST", again + "/recover", Json.compact(picked), 200);
    assertThat(vector(recovered.get("axis")).angleDegTo(MOTION.direction(axis))).isLessThan(0.05);
    assertThat(recovered.get("axisErrorDeg").asDouble()).isBetween(0.05, 3.0);
    points.remove(2);
    assertThat(
            visitor
                .json("POST", again + "/recover", Json.compact(picked), 422)
                .get("code")
                .asText())
        .isEqualTo("tripod-three-points");

    String id = first.substring(first.lastIndexOf('/') + 1);
    String other = "{\"first\":\"" + id + "\",\"tilt\":[4,-3]}";
    JsonNode carried = visitor.json("POST", again + "/recover/rescan", other, 200);
    assertThat(vector(carried.get("axis")).angleDegTo(MOTION.direction(axis))).isLessThan(0.1);
    assertThat(carried.get("share").asDouble()).isGreaterThan(0.9);
    assertThat(visitor.json("POST", again + "/recover/rescan", "{\"first\":\"x\"}", 404))
        .isNotEmpty();
  }

  private JsonNode move(String cast, ObjectNode tripod, Vec3 to, int status) throws IOException {
    ObjectNode body = Json.object();
    body.set("tripod", tripod);
    body.put("which", 0);
    body.set("to", Json.point(to));
    return visitor.json("POST", cast + "/tripod/move", Json.compact(body), status);
  }
}
