package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.SphereCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.CaseSaid;
import rodwork.app.report.Json;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.design.abutment.Answers;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;

/** Work on the bench kept in a case, over an end of the program. */
class CaseRoutesTest {
  private static final String BENCH =
      "{\"document\":{\"tilt\":{\"anterior\":3,\"right\":-1},"
          + "\"frame\":{\"jaw\":\"lower\",\"up\":[0,0,2],\"front\":[0,1,0]}},"
          + "\"history\":{\"past\":[1,2],\"future\":[]}}";

  private static final String AT_REST = "{\"tilt\":[0,0]}";

  @TempDir Path bench;
  private BenchServer server;
  private Visitor visitor;

  @BeforeEach
  void start() throws IOException {
    Files.writeString(bench.resolve("index.html"), "<!doctype html>");
    server =
        BenchServer.start(
            BenchServer.Settings.of(bench, "127.0.0.1", 0, bench.resolve("the cases")));
    visitor = new Visitor(server);
  }

  @AfterEach
  void stop() {
    visitor.close();
    server.close();
  }

  private String open(String query) throws IOException {
    byte[] content = Files.readAllBytes(SphereCast.in(bench));
    String id =
        visitor.json("POST", "/api/casts?name=sphere.ply" + query, content, 201).get("id").asText();
    visitor.json(
        "POST",
        "/api/casts/" + id + "/frame",
        "{\"jaw\":\"lower\",\"up\":[0,0,2],\"front\":[0,1,0]}",
        200);
    return id;
  }

  private static String work(String id, String on, String bench) {
    return "{\"cast\":\"%s\",\"on\":%s,\"bench\":%s,\"choices\":{\"notUsed\":[35]}}"
        .formatted(id, on, bench);
  }

  @Test
  void workIsTakenUpAgainAfterTheProgramEnded() throws IOException {
    assertThat(visitor.json("GET", "/api/cases", "", 200).get("cases")).isEmpty();
    String id = open("&jaw=lower&unit=cm");
    JsonNode saved = visitor.json("PUT", "/api/cases/A%207", work(id, "null", BENCH), 201);
    assertThat(saved.get("code").asText()).isEqualTo("A 7");
    double edge = visitor.json("GET", "/api/casts/" + id, "", 200).get("edgeMm").asDouble();
    stop();
    start();
    JsonNode card = visitor.json("GET", "/api/cases", "", 200).get("cases").get(0);
    assertThat(card.get("code").asText()).isEqualTo("A 7");
    assertThat(card.get("jaw").asText()).isEqualTo("lower");
    assertThat(card.get("scan").asText()).isEqualTo("sphere.ply");
    JsonNode again = visitor.json("POST", "/api/cases/A%207/open?jaw=lower", "", 200);
    assertThat(again.get("bench")).isEqualTo(Json.read(BENCH));
    assertThat(again.get("revision")).isEqualTo(saved.get("revision"));
    JsonNode cast = again.get("cast");
    // Unit, jaw and both directions are those that a person told.
    assertThat(cast.get("edgeMm").asDouble()).isEqualTo(edge);
    assertThat(cast.get("jaw").asText()).isEqualTo("lower");
    assertThat(cast.get("frame").get("z").get(2).asDouble()).isEqualTo(1);
    // The command line finds the scan as it came, and what was chosen.
    CaseStore store = CaseStore.existing(bench.resolve("the cases"));
    var file = store.get(new CaseCode("A 7"));
    assertThat(store.read(file.part(PartKind.SCAN, Jaw.LOWER).orElseThrow().getValue()))
        .isEqualTo(Files.readAllBytes(SphereCast.in(bench)));
    assertThat(file.part(PartKind.CHOICES, Jaw.LOWER)).isPresent();
  }

  @Test
  void aCaseStaysWithTheRulebookThatItWasBegunBy() throws IOException {
    stop();
    Rulebook school =
        Rulebook.of(
            "school",
            Rulebook.shipped()
                .text()
                .replace("title: Rodwork's own rulebook", "title: A school's")
                .replace(
                    "tripod-disagree: {value: 0.6, unit: mm",
                    "tripod-disagree: {value: 0.1, unit: mm"));
    server =
        BenchServer.start(
            BenchServer.Settings.of(bench, "127.0.0.1", 0, bench.resolve("the cases"))
                .with(school));
    visitor = new Visitor(server);
    visitor.json("PUT", "/api/cases/E", work(open("&jaw=lower"), "null", BENCH), 201);
    stop();
    start();
    JsonNode again = visitor.json("POST", "/api/cases/E/open", "", 200);
    assertThat(again.get("rulebook").get("title").asText()).isEqualTo("A school's");
    assertThat(again.get("rulebook").get("hash").asText()).isEqualTo(school.hash());
    String id = again.get("cast").get("id").asText();
    assertThat(page("/help/rules?cast=" + id)).contains("A school").contains(school.hash());
    assertThat(page("/help/rules")).doesNotContain(school.hash());
    // Marks 0.3 mm off: within the shipped limit, beyond the school's.
    String other = open("&jaw=lower");
    assertThat(recover(id)).isEqualTo(422);
    assertThat(recover(other)).isEqualTo(200);
  }

  /** Recovers a path from marks of which one is 0.3 mm off; the status. */
  private int recover(String id) throws IOException {
    JsonNode tripod = visitor.json("POST", "/api/casts/" + id + "/tripod", AT_REST, 200);
    StringBuilder points = new StringBuilder();
    for (JsonNode mark : tripod.get("marks")) {
      JsonNode p = mark.get("point");
      double x = p.get(0).asDouble();
      double y = p.get(1).asDouble();
      double further = points.isEmpty() ? 1 + 0.3 / Math.hypot(x, y) : 1;
      points.append(points.isEmpty() ? "" : ",");
      points.append("[%s,%s,%s]".formatted(x * further, y * further, p.get(2)));
    }
    return visitor
        .ask(
            "POST",
            "/api/casts/" + id + "/recover",
            BodyPublishers.ofString("{\"tripod\":%s,\"points\":[%s]}".formatted(tripod, points)))
        .statusCode();
  }

  private String page(String path) throws IOException {
    var answer = visitor.ask("GET", path, BodyPublishers.noBody());
    assertThat(answer.statusCode()).as(path).isEqualTo(200);
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  @Test
  void aChangeIsARevisionAndOneOnAnOldStateIsRefusedWithoutLoss() throws IOException {
    String id = open("&jaw=lower");
    int first =
        visitor.json("PUT", "/api/cases/B", work(id, "null", BENCH), 201).get("revision").asInt();
    String other = BENCH.replace(":3,", ":4,");
    String on = String.valueOf(first);
    int second =
        visitor.json("PUT", "/api/cases/B", work(id, on, other), 200).get("revision").asInt();
    assertThat(second).isGreaterThan(first);
    assertThat(refused("PUT", "/api/cases/B", work(id, on, BENCH))).isEqualTo("case-changed");
    assertThat(visitor.json("POST", "/api/cases/B/open", "", 200).get("bench"))
        .isEqualTo(Json.read(other));
    assertThat(refused("PUT", "/api/cases/B", work(id, "null", BENCH))).isEqualTo("case-exists");
    assertThat(refused("PUT", "/api/cases/..%2Fx", work(id, "null", BENCH))).isNotBlank();
    assertThat(refused("PUT", "/api/cases/-", work(id, "null", BENCH)))
        .isEqualTo("case-code-wrong");
    assertThat(refused("PUT", "/api/cases/C", work("cast-99", "null", BENCH)))
        .isEqualTo("cast-not-open");
    assertThat(refused("PUT", "/api/cases/C", work(id, "null", "[]")))
        .isEqualTo("request-unreadable");
    assertThat(refused("POST", "/api/cases/C/open", "")).isEqualTo("case-not-found");
  }

  @Test
  void aJawToldLaterLeavesOneScan() throws IOException {
    byte[] content = Files.readAllBytes(SphereCast.in(bench));
    String id = visitor.json("POST", "/api/casts?name=s.ply", content, 201).get("id").asText();
    int on =
        visitor.json("PUT", "/api/cases/D", work(id, "null", "{}"), 201).get("revision").asInt();
    visitor.json(
        "POST",
        "/api/casts/" + id + "/frame",
        "{\"jaw\":\"upper\",\"up\":[0,0,2],\"front\":[0,1,0]}",
        200);
    visitor.json("PUT", "/api/cases/D", work(id, String.valueOf(on), BENCH), 200);
    JsonNode cases = visitor.json("GET", "/api/cases", "", 200).get("cases");
    assertThat(cases).hasSize(1);
    assertThat(cases.get(0).get("jaw").asText()).isEqualTo("upper");
    assertThat(visitor.json("POST", "/api/cases/D/open", "", 200).get("bench"))
        .isEqualTo(Json.read(BENCH));
  }

  @Test
  void whatTheCommandLinePutIntoACaseIsNewsToTheBenchUntilItSavesIt() throws IOException {
    CaseStore store = CaseStore.open(bench.resolve("the cases"));
    String chart =
        "{\"format\":\"rodwork chart\",\"version\":1,\"jaw\":\"lower\",\"missing\":[36]}";
    String choices = "{\"notUsed\":[35]}";
    byte[] scan = Files.readAllBytes(SphereCast.in(bench));
    var file =
        store.create(
            new CaseCode("E"),
            "made",
            CaseEdit.NONE
                .put(new PartName(PartKind.SCAN, Jaw.LOWER, "sphere.ply"), scan)
                .put(CaseSaid.What.CHART.of(Jaw.LOWER), utf8(chart))
                .put(
                    CaseSaid.What.PATH.of(Jaw.LOWER),
                    CaseSaid.bytes(CaseSaid.path(new Tilt(2, -1), null)))
                .put(CaseSaid.What.CHOICES.of(Jaw.LOWER), utf8(choices)));
    JsonNode opened = visitor.json("POST", "/api/cases/E/open", "", 200);
    assertThat(opened.get("bench").isNull()).isTrue();
    JsonNode news = opened.get("news");
    assertThat(news.get("chart")).isEqualTo(Json.read(chart));
    assertThat(news.get("choices")).isEqualTo(Json.read(choices));
    assertThat(news.get("path").get("tilt").toString()).isEqualTo("[2.0,-1.0]");
    assertThat(news.has("answers")).isFalse();

    String id = opened.get("cast").get("id").asText();
    visitor.json(
        "POST",
        "/api/casts/" + id + "/frame",
        "{\"jaw\":\"lower\",\"up\":[0,0,2],\"front\":[0,1,0]}",
        200);
    visitor.json(
        "PUT",
        "/api/cases/E",
        "{\"cast\":\"%s\",\"on\":%d,\"bench\":%s,\"tilt\":[3,-1],\"choices\":%s,\"answers\":{\"poor-hygiene\":\"no\"}}"
            .formatted(id, file.now().number(), BENCH, choices),
        200);
    // What the bench saved, the command line reads; the axis in the frame of the scan with it.
    CaseSaid said = CaseSaid.of(store, store.get(new CaseCode("E")), Jaw.LOWER);
    assertThat(said.path())
        .isInstanceOfSatisfying(
            WantedPath.AlongAxis.class,
            path ->
                assertThat(path.axis().angleDegTo(new Vec3(0, 0, 1)))
                    .isCloseTo(new Tilt(3, -1).totalDeg(), within(0.01)));
    assertThat(said.choices().notUsed()).containsExactly(ToothNumber.of(35));
    assertThat(said.answers()).isNotEqualTo(Answers.NONE);
    // The chart is still that of the command line: the teeth were never looked for on the bench.
    assertThat(news("E")).containsExactly("chart");

    file = store.get(new CaseCode("E"));
    store.change(
        file,
        "path",
        CaseEdit.NONE.put(
            CaseSaid.What.PATH.of(Jaw.LOWER), CaseSaid.bytes(CaseSaid.path(new Tilt(1, 0), null))));
    assertThat(news("E")).containsExactly("chart", "path");
    store.change(
        store.get(new CaseCode("E")),
        "path",
        CaseEdit.NONE.put(CaseSaid.What.PATH.of(Jaw.LOWER), utf8("{\"tilt\":7}")));
    assertThat(refused("POST", "/api/cases/E/open", "")).isEqualTo("json-wrong");
  }

  /** Opens the case F again; the id of the scan that lies over its cast, all over it. */
  private String laidAfresh() throws IOException {
    JsonNode again = visitor.json("POST", "/api/cases/F/open", "", 200);
    assertThat(again.get("opposingProblem").isNull()).isTrue();
    String path = "/api/casts/" + again.get("cast").get("id").asText() + "/opposing";
    JsonNode laid = visitor.json("GET", path, "", 200).get("opposing");
    assertThat(laid.get("coveredShare").asDouble()).isEqualTo(1);
    return laid.get("id").asText();
  }

  @Test
  void theOpposingScanIsLaidAgainAfterTheProgramEndedAndTakenAwayForGood() throws IOException {
    String id = open("&jaw=lower");
    String path = "/api/casts/" + id + "/opposing";
    byte[] sheet = SphereCast.sheet(25);
    String other = visitor.json("POST", "/api/casts?name=sheet.off", sheet, 201).get("id").asText();
    visitor.json("POST", path, "{\"opposing\":\"" + other + "\"}", 200);
    visitor.json("DELETE", "/api/casts/" + other, "", 204);
    visitor.json("PUT", "/api/cases/F", work(id, "null", BENCH), 201);
    stop();
    start();
    JsonNode again = visitor.json("POST", "/api/cases/F/open", "", 200);
    assertThat(again.get("opposingProblem").isNull()).isTrue();
    id = again.get("cast").get("id").asText();
    path = "/api/casts/" + id + "/opposing";
    JsonNode laid = visitor.json("GET", path, "", 200).get("opposing");
    assertThat(laid.get("file").asText()).isEqualTo("sheet.off");
    assertThat(laid.get("biteId").isNull()).isTrue();
    assertThat(laid.get("coveredShare").asDouble()).isEqualTo(1);
    // It lies among the open casts, once.
    int open = visitor.json("GET", "/api/casts", "", 200).get("casts").size();
    visitor.json("POST", "/api/cases/F/open", "", 200);
    assertThat(visitor.json("GET", "/api/casts", "", 200).get("casts")).hasSize(open + 1);

    // The same bytes looked at from another side are no match: opened anew.
    for (JsonNode there : visitor.json("GET", "/api/casts", "", 200).get("casts")) {
      if (there.get("name").asText().equals("sheet.off")) {
        String frame = "/api/casts/" + there.get("id").asText() + "/frame";
        visitor.json("POST", frame, "{\"up\":[1,0,0],\"front\":[0,1,0]}", 200);
      }
    }
    int before = visitor.json("GET", "/api/casts", "", 200).get("casts").size();
    laidAfresh();
    assertThat(visitor.json("GET", "/api/casts", "", 200).get("casts")).hasSize(before + 2);

    CaseStore store = CaseStore.existing(bench.resolve("the cases"));
    var file = store.get(new CaseCode("F"));
    assertThat(store.read(file.part(PartKind.OPPOSING, Jaw.LOWER).orElseThrow().getValue()))
        .isEqualTo(sheet);
    String on = again.get("revision").asText();
    on =
        visitor
            .json("PUT", "/api/cases/F", work(id, on, BENCH.replace(":3,", ":4,")), 200)
            .get("revision")
            .asText();
    assertThat(store.get(new CaseCode("F")).part(PartKind.OPPOSING, Jaw.LOWER)).isPresent();
    visitor.json("POST", path, "{\"opposing\":null}", 200);
    visitor.json("PUT", "/api/cases/F", work(id, on, BENCH), 200);
    assertThat(store.get(new CaseCode("F")).part(PartKind.OPPOSING, Jaw.LOWER)).isEmpty();
  }

  @Test
  void anOpposingScanThatCannotBeLaidIsToldAndStaysInTheCase() throws IOException {
    String id = open("&jaw=lower");
    visitor.json("PUT", "/api/cases/G", work(id, "null", BENCH), 201);
    CaseStore store = CaseStore.existing(bench.resolve("the cases"));
    var file = store.get(new CaseCode("G"));
    byte[] sheet =
        new String(SphereCast.sheet(25), StandardCharsets.UTF_8)
            .replace("60", "1060")
            .replace("-1060", "1000")
            .getBytes(StandardCharsets.UTF_8);
    store.change(
        file,
        "opposing",
        CaseEdit.NONE.put(new PartName(PartKind.OPPOSING, Jaw.LOWER, "far.off"), sheet));
    JsonNode opened = visitor.json("POST", "/api/cases/G/open", "", 200);
    assertThat(opened.get("opposingProblem").get("code").asText()).isEqualTo("opposing-elsewhere");
    visitor.json(
        "PUT",
        "/api/cases/G",
        work(
            opened.get("cast").get("id").asText(),
            opened.get("revision").asText(),
            BENCH.replace(":3,", ":4,")),
        200);
    assertThat(store.get(new CaseCode("G")).part(PartKind.OPPOSING, Jaw.LOWER)).isPresent();
  }

  private List<String> news(String code) throws IOException {
    List<String> names = new ArrayList<>();
    visitor
        .json("POST", "/api/cases/" + code + "/open", "", 200)
        .get("news")
        .fieldNames()
        .forEachRemaining(names::add);
    return names;
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private String refused(String method, String path, String body) throws IOException {
    var answer = visitor.ask(method, path, BodyPublishers.ofString(body));
    assertThat(answer.statusCode()).as(path).isBetween(400, 499);
    return Json.read(new String(answer.body(), StandardCharsets.UTF_8)).get("code").asText();
  }
}
