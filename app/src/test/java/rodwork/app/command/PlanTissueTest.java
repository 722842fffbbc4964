package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.OpenDemo;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.testing.Shared;

/**
 * Tori and frena of the chart in plans on real arches. That no connector lies on a torus is taught
 * (Blatterfein 1953; freezingblue 338316); the room it keeps is a value of the rulebook, 2 mm.
 */
class PlanTissueTest {
  private static final double CLEAR_MM = 2;

  @TempDir Path folder;

  @Test
  void whatNobodyKnowsIsAskedAndNotAssumed() throws IOException {
    JsonNode upper = planned("upper-14", "14");
    assertThat(asks(upper, "palatal torus?")).isTrue();
    assertThat(asks(upper, "frenum to facial at")).isTrue();
    assertThat(asks(upper, "lingual frenum")).isFalse();
    assertThat(upper.get("tori")).isEmpty();
    JsonNode lower = planned("lower-35", "35");
    assertThat(asks(lower, "right mandibular torus or a left mandibular torus?")).isTrue();
    assertThat(asks(lower, "lingual frenum")).isTrue();
    JsonNode half = planned("lower-35", "35", "--torus", "left=no");
    assertThat(asks(half, "a right mandibular torus?")).isTrue();
    JsonNode none = planned("upper-14", "14", "--torus", "palatal=no");
    assertThat(asks(none, "torus")).isFalse();
    assertThat(none.get("majorConnector")).isEqualTo(upper.get("majorConnector"));
  }

  /** Two straps where one fits behind the torus, else a U, which is open behind. */
  @ParameterizedTest
  @CsvSource({
    "demo, '14,15,25,26', '15,to=16,width=10', anterior-posterior-strap",
    "demo, '14,15,25,26', '15,to=17,width=10', u-shaped",
    "upper-14, 14, '15,to=16,width=8', u-shaped"
  })
  void anUpperConnectorGoesRoundATorus(String arch, String missing, String torus, String kind)
      throws IOException {
    String[] options = {"--torus", "palatal=yes,from=" + torus};
    JsonNode plan =
        arch.equals("demo") ? ofDemo(missing, options) : planned(arch, missing, options);
    assertThat(Schemas.errors("plan", plan)).isEmpty();
    JsonNode connector = plan.get("majorConnector");
    JsonNode mark = plan.get("tori").get(0);
    assertThat(connector.get("kind").asText()).isEqualTo(kind);
    assertThat(connector.get("because").asText()).contains("torus");
    List<Vec3> edge = points(mark.get("edge"));
    double least = Double.POSITIVE_INFINITY;
    for (String curve : List.of("outline", "opening")) {
      for (Vec3 p : points(connector.path(curve))) {
        for (Vec3 q : edge) {
          least = Math.min(least, p.distance(q));
        }
      }
    }
    // Corner to corner, so a little more than curve to curve.
    assertThat(least).isGreaterThanOrEqualTo(CLEAR_MM);
    assertThat(mark.get("roomMm").asDouble()).isCloseTo(least, within(0.3));
    assertThat(verdict(plan, "torus-clear-least").orElseThrow()).isIn("met", "too close to call");
    // Of the 8 mm that a band is wide it keeps a share beside a torus; the finding tells it.
    double kept = Rulebook.shipped().plan().bases().keptShare().value();
    double strap = Rulebook.shipped().plan().upper().posteriorStrap().value();
    assertThat(connector.get("leastWidthMm").asDouble()).isGreaterThanOrEqualTo(kept * strap);
    // The straps of a frame are made longer until they are as wide as wanted; of a U nothing is.
    assertThat(verdict(plan, "posterior-strap-width-least").orElse(""))
        .isIn(kind.equals("u-shaped") ? List.of("") : List.of("met", "too close to call"));
    // The ellipse is as wide as told, over a vault a little more: its 64 corners pair up.
    double told = Double.parseDouble(torus.substring(torus.lastIndexOf('=') + 1));
    assertThat(edge.get(0).distance(edge.get(32))).isBetween(told - 0.01, 1.3 * told);
  }

  @Test
  void aKindThatAPersonChoseStaysAndIsWarnedOf() throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"connector\": \"palatal-strap\"}");
    JsonNode plan =
        planned(
            "upper-14",
            "14",
            "--torus",
            "palatal=yes,from=14,to=17,width=12",
            "--choices",
            choices.toString());
    assertThat(plan.at("/majorConnector/kind").asText()).isEqualTo("palatal-strap");
    assertThat(plan.at("/tori/0/roomMm").asDouble()).isZero();
    assertThat(verdict(plan, "torus-clear-least")).contains("not met");
  }

  @Test
  void aTorusWithoutPlaceIsAskedFor() throws IOException {
    JsonNode plan = planned("upper-14", "14", "--torus", "palatal=yes");
    assertThat(plan.at("/tori/0/edge").isNull()).isTrue();
    assertThat(verdict(plan, "torus-clear-least")).contains("not known");
    assertThat(asks(plan, "name the teeth between which it reaches")).isTrue();
    JsonNode lower = planned("lower-35", "35", "--torus", "right=yes");
    assertThat(lower.at("/majorConnector/kind").asText()).isEqualTo("lingual-plate");
    assertThat(asks(lower, "name the teeth along which it reaches")).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "'right=yes,from=33,to=45,below=8', 'from=33', right mandibular torus",
    "'right=yes,from=43,to=35,below=8', 'to=35', right mandibular torus",
    "'palatal=yes,from=14,to=14,width=8', 'to=14', before or behind the level of from"
  })
  void aTorusOnTheOtherSideOrOfNoLengthIsRefused(String torus, String end, String told) {
    Shell shell = Shell.run("plan", "cast.ply", "--torus", torus);
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err()).contains("--torus", "'" + end + "': wanted is ", told);
  }

  /** A bar wants its 3 mm, its 4 mm and 2 mm more above a torus; else a plate, which ends above. */
  @ParameterizedTest
  @CsvSource({"12, lingual-bar, met", "6.5, lingual-plate, met", "3, lingual-plate, not met"})
  void aLowerConnectorStaysAboveATorusOrIsAPlate(double below, String kind, String verdict)
      throws IOException {
    String torus = "right=yes,from=43,to=45,below=" + below;
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"connector\": \"" + kind + "\"}");
    JsonNode proposed = planned("lower-35", "35", "--torus", torus);
    // This scan ends above the lower edge of a bar, which is laid where a person wants it.
    boolean bar = kind.equals("lingual-bar");
    assertThat(proposed.at("/majorConnector/kind").asText(""))
        .isEqualTo(bar ? "" : "lingual-plate");
    assertThat(asks(proposed, "below the lingual margins for a lingual bar")).isEqualTo(bar);
    JsonNode plan =
        bar
            ? planned("lower-35", "35", "--torus", torus, "--choices", choices.toString())
            : proposed;
    assertThat(plan.at("/majorConnector/kind").asText()).isEqualTo(kind);
    assertThat(verdict(plan, "torus-clear-least")).contains(verdict);
    assertThat(asks(plan, "every lower connector passes over")).isEqualTo(below < 5);
    // This scan ends before 12 mm: the room is known, the edge is not drawn.
    assertThat(points(plan.at("/tori/0/edge")).isEmpty()).isEqualTo(below > 10);
  }

  @Test
  void bordersAreNotchedRoundFrena() throws IOException {
    JsonNode none = planned("lower-35-37-47", "35,37,47", chart("no", "no", "lingual-bar"));
    JsonNode notched = planned("lower-35-37-47", "35,37,47", chart("no", "yes", "lingual-bar"));
    List<Vec3> before = points(base(none, 35).get("outline"));
    List<Vec3> after = points(base(notched, 35).get("outline"));
    assertThat(after).hasSameSizeAs(before);
    double deepest = 0;
    int moved = 0;
    for (int i = 0; i < before.size(); i++) {
      double off = before.get(i).distance(after.get(i));
      deepest = Math.max(deepest, off);
      moved += off > 0.01 ? 1 : 0;
    }
    // 2 mm by the rulebook, or what a shallow vestibule leaves; elsewhere nothing moves.
    assertThat(deepest).isBetween(0.8, 2.1);
    assertThat(moved).isBetween(3, before.size() / 3);
    assertThat(none.at("/majorConnector/kind").asText()).isEqualTo("lingual-bar");
    assertThat(notched.get("majorConnector")).isEqualTo(none.get("majorConnector"));
    JsonNode tongue = planned("lower-35-37-47", "35,37,47", chart("yes", "no", null));
    assertThat(tongue.at("/majorConnector/kind").asText()).isEqualTo("lingual-plate");
    assertThat(asks(tongue, "lower border of the connector is notched")).isTrue();
  }

  /** A bar under the tongue asks for its own room, and any bar for frena that the chart names. */
  @Test
  void aChosenBarIsHeldAgainstRoomAndFrenum() throws IOException {
    for (String kind : List.of("lingual-bar", "sublingual-bar")) {
      for (double room : new double[] {4, 6, 9}) {
        Path file = folder.resolve(kind + room + ".json");
        Files.writeString(
            file,
            """
            {"format": "rodwork chart", "version": 1, "jaw": "lower", "missing": [35],
             "places": [{"tooth": 31, "lingualFrenum": "%s", "floorDepthMm": %s}]}
            """
                .formatted(room == 9 ? "no" : "yes", room));
        Path choices = folder.resolve("choices.json");
        Files.writeString(choices, "{\"connector\": \"" + kind + "\"}");
        JsonNode plan =
            planned("lower-35", "35", "--chart", file.toString(), "--choices", choices.toString());
        double wanted = kind.equals("lingual-bar") ? 8 : 5;
        assertThat(verdict(plan, kind + "-room-least")).contains(room < wanted ? "not met" : "met");
        assertThat(verdict(plan, "lingual-frena-under-bar-most"))
            .isEqualTo(room == 9 ? Optional.empty() : Optional.of("not met"));
      }
    }
  }

  /**
   * On a scan that ends early a bar of 4 mm is not laid, and the plan names the teeth; one of 1.5
   * mm ends above that place and is. What a person chooses is laid, and said to be over nothing.
   */
  @Test
  void aBarIsLaidOnlyWhereTheScanShowsItsPlace() throws IOException {
    JsonNode none = planned("lower-35", "35");
    assertThat(none.get("majorConnector").isNull()).isTrue();
    assertThat(none.get("minorConnectors")).isEmpty();
    String told = question(none, "below the lingual margins for a lingual bar");
    assertThat(told)
        .contains("at 44 after ", " of 7.0 mm", "choose a lingual plate", "not whole")
        .doesNotContain("at 43 ", "at 33 ");
    double shown = Double.parseDouble(told.replaceAll(".*at 44 after ([\\d.]+) of.*", "$1"));
    // From 3 mm below the margins down: what is shown there holds this much, and no more.
    double room = shown - 3;
    assertThat(room).isBetween(1.2, 3.5);
    Path low =
        rulebook("lingual-bar-height: {value: 4,", "lingual-bar-height: {value: %.1f,", room);
    JsonNode lower = planned("lower-35", "35", "--rulebook", low.toString());
    assertThat(asks(lower, "below the lingual margins")).isFalse();
    assertThat(lower.at("/majorConnector/kind").asText()).isEqualTo("lingual-bar");
    Path high =
        rulebook("lingual-bar-height: {value: 4,", "lingual-bar-height: {value: %.1f,", room + 0.3);
    JsonNode higher = planned("lower-35", "35", "--rulebook", high.toString());
    assertThat(higher.get("majorConnector").isNull()).isTrue();
    for (String kind : List.of("lingual-bar", "lingual-plate")) {
      Path choices = folder.resolve("choices.json");
      Files.writeString(choices, "{\"connector\": \"" + kind + "\"}");
      JsonNode chosen = planned("lower-35", "35", "--choices", choices.toString());
      assertThat(chosen.at("/majorConnector/kind").asText()).isEqualTo(kind);
      assertThat(question(chosen, "below the lingual margins"))
          .contains("drawn over what is not shown");
      if (kind.equals("lingual-bar")) {
        assertThat(verdict(chosen, "lingual-bar-height")).contains("not met");
      }
    }
  }

  /** What a U, a sublingual bar and a plate want beside their sizes: handbook 5.10, 5.19, 5.20. */
  @Test
  void aChosenKindIsHeldAgainstWhatSpeaksForIt() throws IOException {
    String arch = "upper-14";
    assertThat(chosen(arch, "u-shaped", "u-connector-reasons-least")).contains("not known");
    assertThat(chosen(arch, "u-shaped", "u-connector-reasons-least", "palatal=no"))
        .contains("not met");
    assertThat(
            chosen(
                arch, "u-shaped", "u-connector-reasons-least", "palatal=yes,from=15,to=16,width=8"))
        .contains("met");
    assertThat(chosen(arch, "palatal-strap", "u-connector-reasons-least")).isEmpty();
    String tori = "tori-under-sublingual-bar-most";
    assertThat(chosen("lower-35", "sublingual-bar", tori)).contains("not known");
    assertThat(chosen("lower-35", "sublingual-bar", tori, "left=no", "right=no")).contains("met");
    assertThat(
            chosen(
                "lower-35", "sublingual-bar", tori, "left=no", "right=yes,from=43,to=45,below=4"))
        .contains("not met");
    assertThat(chosen("lower-35", "lingual-bar", tori)).isEmpty();
    String ends = "lingual-plate-ends-rested-least";
    assertThat(chosen("lower-35", "lingual-plate", ends)).contains("met");
    assertThat(chosen("lower-35", "lingual-bar", ends)).isEmpty();
    Path three = rulebook(ends + ": {value: 2,", ends + ": {value: %.0f,", 3);
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"connector\": \"lingual-plate\"}");
    JsonNode plate =
        planned("lower-35", "35", "--choices", choices.toString(), "--rulebook", three.toString());
    assertThat(verdict(plate, ends)).contains("not met");
  }

  private Optional<String> chosen(String arch, String kind, String rule, String... tori)
      throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"connector\": \"" + kind + "\"}");
    List<String> line = new ArrayList<>(List.of("--choices", choices.toString()));
    for (String torus : tori) {
      line.addAll(List.of("--torus", torus));
    }
    return verdict(
        planned(arch, arch.substring(arch.indexOf('-') + 1), line.toArray(String[]::new)), rule);
  }

  private Path rulebook(String was, String now, double value) throws IOException {
    String text = Shell.run("rulebook", "--out", "-").out();
    assertThat(text).contains(was);
    return Files.writeString(
        folder.resolve("mine.yaml"),
        text.replace(was, String.format(java.util.Locale.ROOT, now, value)));
  }

  private static String question(JsonNode plan, String words) {
    for (JsonNode question : plan.get("questions")) {
      if (question.asText().contains(words)) {
        return question.asText();
      }
    }
    throw new AssertionError("nothing asks for " + words);
  }

  private String[] chart(String lingual, String facial, @Nullable String kind) throws IOException {
    Path file = folder.resolve("chart-" + lingual + facial + ".json");
    Files.writeString(
        file,
        """
        {"format": "rodwork chart", "version": 1, "jaw": "lower", "missing": [35, 37, 47],
         "places": [{"tooth": 31, "lingualFrenum": "%s"}, {"tooth": 41, "lingualFrenum": "no"},
                    {"tooth": 35, "facialFrenum": "%s"}]}
        """
            .formatted(lingual, facial));
    if (kind == null) {
      return new String[] {"--chart", file.toString()};
    }
    Path choices = folder.resolve("choices-" + kind + ".json");
    Files.writeString(choices, "{\"connector\": \"" + kind + "\"}");
    return new String[] {"--chart", file.toString(), "--choices", choices.toString()};
  }

  private static JsonNode base(JsonNode plan, int tooth) {
    for (JsonNode base : plan.get("bases")) {
      if (base.get("missing").get(0).asInt() == tooth) {
        return base;
      }
    }
    throw new AssertionError("no base at " + tooth);
  }

  private static boolean asks(JsonNode plan, String words) {
    for (JsonNode question : plan.get("questions")) {
      if (question.asText().contains(words)) {
        return true;
      }
    }
    return false;
  }

  private static Optional<String> verdict(JsonNode plan, String rule) {
    for (JsonNode finding : plan.get("findings")) {
      if (finding.get("rule").asText().equals(rule)) {
        return Optional.of(finding.get("verdict").asText());
      }
    }
    return Optional.empty();
  }

  private static List<Vec3> points(JsonNode line) {
    List<Vec3> points = new ArrayList<>();
    for (JsonNode p : line.path("points")) {
      points.add(new Vec3(p.get(0).asDouble(), p.get(1).asDouble(), p.get(2).asDouble()));
    }
    return points;
  }

  private JsonNode ofDemo(String missing, String... more) throws IOException {
    Path cast = folder.resolve("demo-upper.ply");
    MeshFiles.write(cast, OpenDemo.of(Jaw.UPPER, Watch.NONE).mesh(), Watch.NONE);
    List<String> line =
        new ArrayList<>(List.of("plan", cast.toString(), "--missing", missing, "--json", "-"));
    line.addAll(List.of(more));
    Shell shell = Shell.run(line.toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }

  private static JsonNode planned(String arch, String missing, String... more) throws IOException {
    List<String> line =
        new ArrayList<>(
            List.of(
                "plan",
                Shared.file("arches/" + arch + ".ply").toString(),
                "--labels",
                Shared.file("arches/" + arch + ".labels.json").toString(),
                "--json",
                "-"));
    line.addAll(List.of(more));
    if (!line.contains("--chart")) {
      line.addAll(List.of("--missing", missing));
    }
    Shell shell = Shell.run(line.toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }
}
