package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Vec3;
import rodwork.geometry.testing.Shared;

/** Real arches with labels that their authors made. */
class AbutmentsCommandTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "upper-16-23, '16,23', '17 mesial,15 distal,22 distal,24 mesial'",
    "lower-35-37-47, '35,37,47', '46 distal,34 distal,36 mesial,36 distal'",
    "upper-17-27, '17,27', '16 distal,26 distal'",
  })
  void everyAbutmentOfARealArchIsJudgedWithReasons(String arch, String missing, String expected)
      throws IOException {
    JsonNode json = judged(arch, missing);
    assertThat(Schemas.errors("abutments", json)).isEmpty();
    List<String> rows = new ArrayList<>();
    for (JsonNode abutment : json.get("abutments")) {
      rows.add(abutment.get("tooth").asInt() + " " + abutment.get("side").asText());
      assertThat(abutment.get("families")).hasSize(Rulebook.shipped().clasps().families().size());
      for (JsonNode family : abutment.get("families")) {
        reasoned(family);
        laidOut(family);
      }
      assertThat(abutment.get("thirds")).hasSize(6);
    }
    assertThat(String.join(",", rows)).isEqualTo(expected);
  }

  /** Each answer has the findings that it needs, each finding its source. */
  private static void reasoned(JsonNode family) {
    String name = family.get("family").asText();
    List<String> verdicts = new ArrayList<>();
    for (JsonNode finding : family.get("findings")) {
      assertThat(finding.get("source").asText()).as(name).isNotBlank();
      if (finding.get("otherwise").asText().equals("rules out")) {
        verdicts.add(finding.get("verdict").asText());
      }
    }
    switch (family.get("answer").asText()) {
      case "does not serve" -> assertThat(verdicts).as(name).contains("not met");
      case "not decided" -> assertThat(family.get("undecided")).as(name).isNotEmpty();
      case "serves after" ->
          assertThat(family.get("preparations").size() + family.get("changes").size())
              .as(name)
              .isPositive();
      default -> assertThat(verdicts).as(name).containsOnly("met");
    }
  }

  /** What is not ruled out has arms of believable size, or the reason why not. */
  private static void laidOut(JsonNode family) {
    String name = family.get("family").asText();
    JsonNode clasp = family.get("clasp");
    boolean out = family.get("answer").asText().equals("does not serve");
    // Arms of what does not serve are told only where it is the arms that rule it out.
    if (out && clasp.isNull()) {
      return;
    }
    if (clasp.isNull()) {
      assertThat(family.get("noClasp").asText()).as(name).isNotBlank();
      return;
    }
    if (!out) {
      assertThat(clasp.get("retentive").get("lengthMm").asDouble()).as(name).isBetween(5.0, 45.0);
      assertThat(clasp.get("encirclementDeg").asDouble()).as(name).isBetween(90.0, 360.0);
    }
    JsonNode line = clasp.get("retentive").get("line");
    for (int i = 1; i < line.size(); i++) {
      double step = 0;
      for (int k = 0; k < 3; k++) {
        step += Math.pow(line.get(i).get(k).asDouble() - line.get(i - 1).get(k).asDouble(), 2);
      }
      assertThat(Math.sqrt(step)).as("%s, step %d of its arm", name, i).isLessThan(4);
    }
    // A hairpin turns back and a bar over the gum; any other arm is one smooth curve.
    boolean around = !name.endsWith("bar") && !name.equals("rpi") && !name.equals("hairpin");
    if (!out && around) {
      assertThat(greatestTurnDeg(line)).as("%s, turn of its arm", name).isLessThan(75);
    }
    JsonNode forces = clasp.get("forces");
    assertThat(forces.isNull()).isEqualTo(!clasp.get("retentive").get("onMark").asBoolean());
    if (!forces.isNull() && !forces.get("pullN").isNull()) {
      assertThat(forces.get("pullN").get("from").asDouble())
          .isBetween(0.05, forces.get("pullN").get("to").asDouble());
      double peak = 0;
      for (JsonNode pair : forces.get("mostPull")) {
        peak = Math.max(peak, pair.get(1).asDouble());
      }
      // Every second step is written, so the peak may be missed by little.
      assertThat(peak).isCloseTo(forces.get("pullN").get("to").asDouble(), withinPercentage(5));
    }
  }

  /** Between chords of a millimetre [degrees]. */
  private static double greatestTurnDeg(JsonNode line) {
    List<Vec3> chord = new ArrayList<>();
    for (JsonNode p : line) {
      Vec3 at = new Vec3(p.get(0).asDouble(), p.get(1).asDouble(), p.get(2).asDouble());
      if (chord.isEmpty() || at.minus(chord.getLast()).length() >= 1) {
        chord.add(at);
      }
    }
    double greatest = 0;
    for (int i = 2; i < chord.size(); i++) {
      Vec3 before = chord.get(i - 1).minus(chord.get(i - 2));
      greatest = Math.max(greatest, before.angleDegTo(chord.get(i).minus(chord.get(i - 1))));
    }
    return greatest;
  }

  @Test
  void anAnswerDecidesWhatHungOnIt() throws IOException {
    Map<String, String> before = answers(judged("upper-17-27", "17,27"), 16);
    Map<String, String> after =
        answers(judged("upper-17-27", "17,27", "--answer", "16:frenum=yes"), 16);
    for (String family : before.keySet()) {
      boolean bar = family.endsWith("bar") || family.equals("rpi");
      assertThat(after.get(family))
          .as(family)
          .isEqualTo(bar ? "does not serve" : before.get(family));
    }
    assertThat(answers(judged("upper-17-27", "17,27", "--answer", "16:frenum=yes"), 26))
        .isEqualTo(answers(judged("upper-17-27", "17,27"), 26));
  }

  @Test
  void oneThresholdInACopyOfTheRulebookChangesWhatItShouldAndNoMore() throws IOException {
    String text = Rulebook.shipped().text();
    String strict =
        text.replace("tip-from-margin-least: {value: 1.0,", "tip-from-margin-least: {value: 3.5,");
    assertThat(strict).isNotEqualTo(text);
    Path copy = folder.resolve("copy.yaml");
    Files.writeString(copy, strict);
    JsonNode before = judged("upper-16-23", "16,23");
    JsonNode after = judged("upper-16-23", "16,23", "--rulebook", copy.toString());
    assertThat(after.get("rulebook").get("hash")).isNotEqualTo(before.get("rulebook").get("hash"));
    int changed = 0;
    for (int i = 0; i < before.get("abutments").size(); i++) {
      Map<String, JsonNode> old = families(before.get("abutments").get(i));
      Map<String, JsonNode> now = families(after.get("abutments").get(i));
      for (Map.Entry<String, JsonNode> entry : old.entrySet()) {
        String family = entry.getKey();
        TreeSet<String> rules = new TreeSet<>();
        Map<String, JsonNode> was = findings(entry.getValue());
        findings(Objects.requireNonNull(now.get(family)))
            .forEach(
                (rule, finding) -> {
                  if (!finding.equals(was.get(rule))) {
                    rules.add(rule);
                  }
                });
        // What lies above the clear strip follows from the same threshold.
        rules.remove("wire-below-line-in-middle");
        rules.remove("wire-below-line-at-tip");
        if (!rules.isEmpty()) {
          // Without a mark the undercut to be deepened is sought clear of the same margin.
          assertThat(rules).as(family).containsAnyOf("tip-clear-of-margin", "retentive-undercut");
          changed++;
        }
      }
    }
    assertThat(changed).isGreaterThan(4);
  }

  /** What nobody was asked yet keeps a family open; it never stands as the reason against it. */
  @Test
  void noFamilyIsRefusedInTheTableForWhatIsNotKnown() {
    Shell shell =
        Shell.run(
            "abutments",
            Shared.file("arches/lower-35-37-47.ply").toString(),
            "--labels",
            Shared.file("arches/lower-35-37-47.labels.json").toString(),
            "--missing",
            "35,37,47");
    assertThat(shell.out().lines().filter(line -> line.startsWith("  no")))
        .isNotEmpty()
        .allSatisfy(line -> assertThat(line).doesNotContain("not known", "not asked"));
  }

  @Test
  void whatCannotBeAnsweredIsRefused() {
    for (String[] wrong :
        new String[][] {
          {"mood=good", "there is no fact \"mood\""},
          {"35:mobile=perhaps", "it is one of yes, no"},
          {"99:mobile=yes", "\"99\" is no FDI number"},
          {"vestibule-depth=deep", "a number of mm from 0 to 100"},
          {"mobile", "it has no ="}
        }) {
      Shell shell = Shell.run("abutments", "cast.stl", "--answer", wrong[0]);
      assertThat(shell.code()).isEqualTo(1);
      assertThat(shell.err()).contains(wrong[1]);
    }
  }

  @Test
  void aToothThatIsNotThereIsRefused() {
    Shell shell =
        Shell.run(
            "abutments",
            Shared.file("arches/upper-17-27.ply").toString(),
            "--labels",
            Shared.file("arches/upper-17-27.labels.json").toString(),
            "--teeth",
            "17");
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err()).contains("17");
  }

  @Test
  void theTableSaysTheNumbers() {
    Shell shell =
        Shell.run(
            "abutments",
            Shared.file("arches/upper-16-23.ply").toString(),
            "--labels",
            Shared.file("arches/upper-16-23.labels.json").toString(),
            "--missing",
            "16,23");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out())
        .contains(
            "15, space 16 on its distal side", "undercut", "plane", "gum", "wanted", "An aid:");
  }

  private static Map<String, JsonNode> families(JsonNode abutment) {
    Map<String, JsonNode> families = new TreeMap<>();
    abutment.get("families").forEach(f -> families.put(f.get("family").asText(), f));
    return families;
  }

  private static Map<String, JsonNode> findings(JsonNode family) {
    Map<String, JsonNode> findings = new TreeMap<>();
    family.get("findings").forEach(f -> findings.put(f.get("rule").asText(), f));
    return findings;
  }

  private static Map<String, String> answers(JsonNode json, int tooth) {
    Map<String, String> answers = new TreeMap<>();
    for (JsonNode abutment : json.get("abutments")) {
      if (abutment.get("tooth").asInt() == tooth) {
        families(abutment).forEach((id, f) -> answers.put(id, f.get("answer").asText()));
      }
    }
    assertThat(answers).isNotEmpty();
    return answers;
  }

  private static JsonNode judged(String arch, String missing, String... more) throws IOException {
    List<String> line =
        new ArrayList<>(
            List.of(
                "abutments",
                Shared.file("arches/" + arch + ".ply").toString(),
                "--labels",
                Shared.file("arches/" + arch + ".labels.json").toString(),
                "--missing",
                missing,
                "--json",
                "-"));
    line.addAll(List.of(more));
    Shell shell = Shell.run(line.toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }
}
