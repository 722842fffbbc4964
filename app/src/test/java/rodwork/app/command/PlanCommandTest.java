package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Shared;

/** Plans on real arches with labels that their authors made. */
class PlanCommandTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "upper-16-23, '16,23', without palate",
    "upper-17-27, '17,27', without palate",
    "upper-15-24, '15,24', without palate",
    "upper-14, 14, whole",
    "lower-35, 35, without lingual slope",
    "lower-35-37-47, '35,37,47', without lingual slope",
  })
  void everyCurveLiesOnTheCastAndEveryRuleHasItsSource(String arch, String missing, String scan)
      throws IOException {
    Path drawing = folder.resolve("plan.svg");
    JsonNode json = planned(arch, missing, "--drawing", drawing.toString());
    assertThat(Schemas.errors("plan", json)).isEmpty();
    TriangleTree tree = tree(arch);
    int curves = 0;
    for (Map.Entry<String, JsonNode> part : json.properties()) {
      // Chords of curves on crowns between points half a millimetre apart; the arm of a clasp may
      // be
      // a bar, which stands off the gum by its relief of a quarter millimetre.
      double most = part.getKey().equals("clasps") ? 0.3 : 0.05;
      for (JsonNode points : part.getValue().findValues("points")) {
        for (JsonNode p : points) {
          Vec3 at = new Vec3(p.get(0).asDouble(), p.get(1).asDouble(), p.get(2).asDouble());
          assertThat(tree.closest(at).orElseThrow().distance()).as(part.getKey()).isLessThan(most);
        }
        curves++;
      }
    }
    assertThat(curves).isGreaterThan(8);
    assertThat(json.get("bases")).isNotEmpty();
    assertThat(json.get("rests")).isNotEmpty();
    boolean unspanned = json.get("questions").toString().contains("the plan is not whole");
    assertThat(json.get("majorConnector").isNull()).isEqualTo(unspanned);
    if (scan.equals("whole")) {
      assertThat(unspanned).isFalse();
      assertThat(json.at("/majorConnector/leastWidthMm").asDouble()).isGreaterThan(8);
    } else {
      assertThat(unspanned).isTrue();
    }
    for (JsonNode finding : json.get("findings")) {
      assertThat(finding.get("source").asText()).isNotBlank();
    }
    for (JsonNode rest : json.get("rests")) {
      if (rest.get("kind").asText().equals("occlusal")) {
        assertThat(rest.get("widthMm").asDouble()).isGreaterThanOrEqualTo(2.5);
      }
    }
    String svg = Files.readString(drawing);
    assertThat(svg).contains("data-view=\"from above\"", "class=\"legend\"");
    assertThat(svg.contains("class=\"connector\"")).isEqualTo(!unspanned);
    assertThat(svg).doesNotContain("NaN");
  }

  /** A plate covers half of the palate; a strap is as wide as the rule wants, across its run. */
  @Test
  void aPlateIsBroaderThanAStrapAndNeitherIsDrawnOverAPalateThatWasNotScanned() throws IOException {
    // One rest on the side without a space, so that the strap is as narrow as it may be.
    JsonNode strap = connector("\"palatal-strap\"");
    assertThat(strap.get("kind").asText()).isEqualTo("palatal-strap");
    assertThat(strap.get("leastWidthMm").asDouble()).isBetween(8.0, 12.0);
    JsonNode plate = connector("\"palatal-plate\"");
    assertThat(plate.get("areaMm2").asDouble())
        .isGreaterThan(1.2 * strap.get("areaMm2").asDouble());
    assertThat(plate.get("leastWidthMm").asDouble())
        .isGreaterThan(1.2 * strap.get("leastWidthMm").asDouble());
    assertThat(connector("\"u-shaped\"").get("leastWidthMm").asDouble()).isBetween(6.0, 8.01);
    JsonNode open = planned("upper-15-24", "15,24");
    assertThat(open.get("majorConnector").isNull()).isTrue();
    assertThat(open.get("questions").toString()).contains("No major connector could be laid");
  }

  private JsonNode connector(String kind) throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"notUsed\": [25], \"connector\": " + kind + "}");
    return planned("upper-14", "14", "--choices", choices.toString()).get("majorConnector");
  }

  @Test
  void aChoiceChangesWhatItNamesAndKeepsItsWarnings() throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(
        choices,
        """
        {"clasps": {"15": "i-bar"}, "rests": {"15": {"kind": "occlusal", "side": "distal"}},
         "connector": "palatal-plate"}
        """);
    JsonNode json = planned("upper-14", "14", "--choices", choices.toString());
    JsonNode clasp = named(json.get("clasps"), 15).orElseThrow();
    assertThat(clasp.get("family").asText()).isEqualTo("i-bar");
    assertThat(clasp.get("chosen").asBoolean()).isTrue();
    assertThat(named(json.get("rests"), 15).orElseThrow().get("side").asText()).isEqualTo("distal");
    assertThat(json.get("majorConnector").get("kind").asText()).isEqualTo("palatal-plate");
    // The findings of the family that was chosen are all kept.
    List<String> rules = new ArrayList<>();
    json.get("findings").forEach(f -> rules.add(f.get("rule").asText()));
    assertThat(rules).contains("bar-total-stand-off");
  }

  /** What the list says of a cut is what the prepared cast shows, and no limit is passed unsaid. */
  @Test
  void thePreparedCastIsTheScanWithTheCutsOfTheList() throws IOException {
    Path file = folder.resolve("prepared.ply");
    JsonNode json = planned("upper-14", "14", "--prepared", file.toString());
    JsonNode steps = json.at("/preparation/steps");
    assertThat(steps).isNotEmpty();
    double deepest = 0;
    for (JsonNode step : steps) {
      double amount = step.get("amountMm").asDouble();
      deepest = Math.max(deepest, amount);
      boolean over = false;
      for (JsonNode finding : step.get("findings")) {
        over |= finding.get("verdict").asText().equals("not met");
      }
      String kind = step.get("kind").asText();
      if (kind.equals("guiding plane") || kind.equals("survey line lowered")) {
        assertThat(amount).isLessThanOrEqualTo(0.5);
      } else if (over) {
        assertThat(step.get("cautions")).isNotEmpty();
      }
    }
    TriangleMesh scan = MeshFiles.read(Shared.file("arches/upper-14.ply"), Watch.NONE).toMesh();
    TriangleMesh prepared = MeshFiles.read(file, Watch.NONE).toMesh();
    assertThat(prepared.triangleCount()).isEqualTo(scan.triangleCount());
    double farthest = 0;
    for (int v = 0; v < scan.vertexCount(); v++) {
      farthest = Math.max(farthest, scan.vertex(v).distance(prepared.vertex(v)));
    }
    assertThat(farthest).isGreaterThan(0.9 * deepest).isLessThan(2 * deepest);
  }

  /**
   * A bar would cross a high lingual frenum (freezingblue 338316); a base is notched round a facial
   * one.
   */
  @Test
  void frenaOfTheChartAreMinded() throws IOException {
    // The scan ends above the lower edge of the bar that is proposed without a frenum.
    assertThat(planned("lower-35-37-47", "35,37,47").get("questions").toString())
        .contains("below the lingual margins for a lingual bar");
    Path chart =
        Files.writeString(
            folder.resolve("chart.json"),
            """
            {"format": "rodwork chart", "version": 1, "jaw": "lower", "missing": [35, 37, 47],
             "places": [{"tooth": 31, "lingualFrenum": "yes"}, {"tooth": 35, "facialFrenum": "yes"}]}
            """);
    Shell shell =
        Shell.run(
            "plan",
            Shared.file("arches/lower-35-37-47.ply").toString(),
            "--labels",
            Shared.file("arches/lower-35-37-47.labels.json").toString(),
            "--chart",
            chart.toString(),
            "--json",
            "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode plan = Json.read(shell.out());
    assertThat(plan.at("/majorConnector/kind").asText()).isEqualTo("lingual-plate");
    assertThat(plan.at("/majorConnector/because").asText()).contains("lingual frenum");
    assertThat(plan.get("questions").toString())
        .contains(
            "lingual frenum comes near the margin at 31:",
            "facial frenum lies at 35: the border of the base is notched");
  }

  /**
   * A real Class I arch: two proposed on the canines; one taken away, one put elsewhere, one moved.
   */
  @Test
  void indirectRetainersAreAddedTakenAwayAndMoved() throws IOException {
    JsonNode proposed = planned("lower-35-37-47", "35,37,47");
    assertThat(teeth(proposed.get("indirectRetainers"))).containsExactlyInAnyOrder(43, 33);
    assertThat(count(proposed)).isEqualTo("met");
    JsonNode taken = withIndirect("\"43\": \"none\"");
    assertThat(teeth(taken.get("indirectRetainers"))).containsExactly(33);
    assertThat(named(taken.get("rests"), 43)).isEmpty();
    assertThat(count(taken)).isEqualTo("not met");
    JsonNode moved =
        withIndirect("\"43\": \"none\", \"44\": {\"kind\": \"occlusal\", \"side\": \"mesial\"}");
    assertThat(teeth(moved.get("indirectRetainers"))).containsExactlyInAnyOrder(44, 33);
    assertThat(count(moved)).isEqualTo("met");
    JsonNode added = withIndirect("\"31\": {\"kind\": \"incisal\", \"side\": \"mesial\"}");
    assertThat(teeth(added.get("indirectRetainers"))).containsExactlyInAnyOrder(43, 33, 31);
    assertThat(added.get("questions").toString()).contains("incisor 31");
    // Further from the line than a canine: the lever is longer.
    assertThat(named(added.get("indirectRetainers"), 31).orElseThrow().get("ratio").asDouble())
        .isGreaterThan(
            named(added.get("indirectRetainers"), 33).orElseThrow().get("ratio").asDouble());
  }

  private JsonNode withIndirect(String indirect) throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"indirect\": {" + indirect + "}}");
    return planned("lower-35-37-47", "35,37,47", "--choices", choices.toString());
  }

  private static List<Integer> teeth(JsonNode parts) {
    List<Integer> teeth = new ArrayList<>();
    parts.forEach(p -> teeth.add(p.get("tooth").asInt()));
    return teeth;
  }

  private static String count(JsonNode plan) {
    for (JsonNode finding : plan.get("findings")) {
      if (finding.get("rule").asText().equals("indirect-retainers-class-i")) {
        return finding.get("verdict").asText();
      }
    }
    throw new AssertionError("the number of indirect retainers was not asked");
  }

  /** Plan, ledger and drawing show one arm, also where a person chose what does not serve. */
  @Test
  void theArmsOfThePlanAreThoseOfTheLedger() throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, "{\"clasps\": {\"15\": \"i-bar\"}}");
    JsonNode plan = planned("upper-14", "14");
    JsonNode chosen = planned("upper-14", "14", "--choices", choices.toString());
    int compared = 0;
    for (JsonNode clasp : plan.get("clasps")) {
      JsonNode told = ledger("upper-14", "14", clasp);
      if (told.isObject()) {
        assertThat(clasp.at("/retentive/points")).isEqualTo(told.at("/retentive/line"));
        assertThat(clasp.get("onMark")).isEqualTo(told.at("/retentive/onMark"));
        assertThat(clasp.get("reciprocal").isNull()).isEqualTo(told.get("opposing").isNull());
        compared++;
      }
    }
    assertThat(compared).isPositive();
    JsonNode bar = named(chosen.get("clasps"), 15).orElseThrow();
    assertThat(bar.get("retentive").isNull()).isFalse();
    assertThat(bar.get("reciprocal").isNull()).as("a plate opposes it or an arm").isFalse();
  }

  private static JsonNode ledger(String arch, String missing, JsonNode clasp) throws IOException {
    Shell shell =
        Shell.run(
            "abutments",
            Shared.file("arches/" + arch + ".ply").toString(),
            "--labels",
            Shared.file("arches/" + arch + ".labels.json").toString(),
            "--missing",
            missing,
            "--json",
            "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    for (JsonNode abutment : Json.read(shell.out()).get("abutments")) {
      if (abutment.get("tooth").equals(clasp.get("tooth"))
          && abutment.get("side").equals(clasp.get("side"))) {
        for (JsonNode family : abutment.get("families")) {
          if (family.get("family").equals(clasp.get("family"))) {
            return family.get("clasp");
          }
        }
      }
    }
    throw new AssertionError(
        "the ledger has no " + clasp.get("family") + " at " + clasp.get("tooth"));
  }

  @Test
  void aMovedBorderGoesWhereItWasMovedAndStaysElsewhere() throws IOException {
    JsonNode before = planned("upper-14", "14");
    JsonNode points = before.get("majorConnector").get("outline").get("points");
    JsonNode p = points.get(points.size() / 2);
    Path choices = folder.resolve("choices.json");
    Files.writeString(
        choices,
        "{\"moves\": [{\"from\": "
            + p
            + ", \"to\": ["
            + p.get(0).asDouble()
            + ","
            + (p.get(1).asDouble() + 1)
            + ","
            + p.get(2).asDouble()
            + "]}]}");
    JsonNode after = planned("upper-14", "14", "--choices", choices.toString());
    JsonNode moved = after.get("majorConnector").get("outline").get("points");
    assertThat(moved).hasSize(points.size());
    int changed = 0;
    for (int i = 0; i < points.size(); i++) {
      changed += points.get(i).equals(moved.get(i)) ? 0 : 1;
    }
    assertThat(changed).isBetween(3, points.size() - 3);
    assertThat(before.get("bases")).isEqualTo(after.get("bases"));
  }

  @Test
  void theSamePlanComesTwice() throws IOException {
    assertThat(planned("lower-35-37-47", "35,37,47"))
        .isEqualTo(planned("lower-35-37-47", "35,37,47"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"clasps\": {\"16\": \"i-bar\"}}|plan-tooth-not-standing",
        "{\"clasps\": {\"15\": \"no-such\"}}|plan-family-not-known",
        "{\"connector\": \"lingual-bar\"}|plan-connector-of-other-jaw",
        "{\"connector\": \"rope\"}|choices-unusable",
        "{\"colour\": 1}|choices-unusable",
        "{|choices-unusable"
      })
  void choicesThatCannotBeAreRefused(String text, String code) throws IOException {
    Path choices = folder.resolve("choices.json");
    Files.writeString(choices, text);
    Shell shell = run("upper-16-23", "16,23", "--choices", choices.toString());
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err()).contains(code);
  }

  /** A real arch, planned twice: a rest on the other side, and a tooth left alone. */
  @ParameterizedTest
  @CsvSource({
    "lower-35-37-47, '35,37,47', 34, mesial, 46",
    "upper-15-24, '15,24', 14, mesial, 23",
  })
  void plansAreComparedPartByPartAndUnderLoad(
      String arch, String missing, int rest, String side, int notUsed) throws IOException {
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"rests\": {\"" + rest + "\": {\"kind\": \"occlusal\", \"side\": \"" + side + "\"}}}");
    Path without = folder.resolve("without.json");
    Files.writeString(without, "{\"notUsed\": [" + notUsed + "]}");
    JsonNode json =
        planned(arch, missing, "--compare", other.toString(), "--compare", without.toString());
    assertThat(Schemas.errors("comparison", json)).isEmpty();
    JsonNode moved = json.get("others").get(0).get("against");
    assertThat(moved.get("parts")).anyMatch(p -> p.get("tooth").asInt() == rest);
    assertThat(moved.get("loads")).isNotEmpty();
    // Every base is bitten on, and every tooth that carries is told of.
    assertThat(moved.get("loads").findValuesAsText("measure")).contains("tipping moment");
    JsonNode left = json.get("others").get(1).get("against");
    assertThat(left.get("loads"))
        .anyMatch(
            l ->
                l.get("tooth").asInt() == notUsed
                    && l.get("answer").asText().equals("only in the first")
                    && l.get("interval").isNull());
    assertThat(left.get("findings"))
        .anyMatch(f -> f.get("turn").asText().equals("only in the first"));
    for (JsonNode load : left.get("loads")) {
      if (load.get("answer").asText().equals("not separable")) {
        assertThat(load.get("interval").get("from").asDouble()).isLessThanOrEqualTo(1);
        assertThat(load.get("interval").get("to").asDouble()).isGreaterThanOrEqualTo(1);
      }
    }
    assertThat(
            planned(arch, missing, "--compare", other.toString(), "--compare", without.toString()))
        .isEqualTo(json);
  }

  @Test
  void aPlanBesideItselfDiffersInNothing() throws IOException {
    Path same = folder.resolve("same.json");
    Files.writeString(same, "{}");
    JsonNode against =
        planned("lower-35-37-47", "35,37,47", "--compare", same.toString())
            .get("others")
            .get(0)
            .get("against");
    for (String list : List.of("parts", "measures", "findings", "firstOpen", "otherOpen")) {
      assertThat(against.get(list)).as(list).isEmpty();
    }
    assertThat(against.get("loads"))
        .allMatch(
            l -> List.of("alike", "hardly loaded in either").contains(l.get("answer").asText()));
  }

  @Test
  void noMoreThanThreePlansAreCompared() throws IOException {
    Path same = folder.resolve("same.json");
    Files.writeString(same, "{}");
    String[] line = new String[6];
    for (int i = 0; i < 6; i += 2) {
      line[i] = "--compare";
      line[i + 1] = same.toString();
    }
    Shell shell = run("lower-35-37-47", "35,37,47", line);
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err()).contains("--compare was given 3 times; the most is 2");
  }

  @Test
  void theTableNamesPartsAndWhatIsOpen() {
    Shell shell = run("lower-35-37-47", "35,37,47");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out()).contains("replaces", "rest", "clasp", "lingual bar", "open", "An aid:");
    assertThat(shell.out()).contains("raised floor of the mouth?");
  }

  @Test
  void replacedTeethAreThoseOfTheSpaces() throws IOException {
    TreeSet<Integer> replaced = new TreeSet<>();
    planned("upper-16-23", "16,23").get("replaced").forEach(t -> replaced.add(t.asInt()));
    assertThat(replaced).containsExactly(16, 23);
  }

  private static Optional<JsonNode> named(JsonNode parts, int tooth) {
    for (JsonNode part : parts) {
      if (part.get("tooth").asInt() == tooth) {
        return Optional.of(part);
      }
    }
    return Optional.empty();
  }

  private static TriangleTree tree(String arch) {
    return TriangleTree.of(
        OpenCast.of(
                Shared.file("arches/" + arch + ".ply"),
                new CastOptions(
                    arch.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER,
                    FrameHints.NONE,
                    Optional.empty()),
                Watch.NONE)
            .cast()
            .mesh());
  }

  private static JsonNode planned(String arch, String missing, String... more) throws IOException {
    List<String> line = new ArrayList<>(List.of("--json", "-"));
    line.addAll(List.of(more));
    Shell shell = run(arch, missing, line.toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }

  private static Shell run(String arch, String missing, String... more) {
    List<String> line =
        new ArrayList<>(
            List.of(
                "plan",
                Shared.file("arches/" + arch + ".ply").toString(),
                "--labels",
                Shared.file("arches/" + arch + ".labels.json").toString(),
                "--missing",
                missing));
    line.addAll(List.of(more));
    return Shell.run(line.toArray(String[]::new));
  }
}
