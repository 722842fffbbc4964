package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.geometry.testing.Shared;

/** A prescription of a real arch, from the file and from a case, with a second revision. */
class PrescribeCommandTest {
  @TempDir Path folder;

  private String run(String... arguments) {
    Shell shell = Shell.run(arguments);
    assertThat(shell.code()).as(shell.err()).isZero();
    return shell.out();
  }

  /** ADA universal and Palmer numbers of the upper right teeth, written down by hand. */
  @Test
  void pagesNumberTeethAsTheReaderDoesAndTheFileKeepsFdi() throws IOException {
    String cast = Shared.file("arches/upper-14.ply").toString();
    String labels = Shared.file("arches/upper-14.labels.json").toString();
    JsonNode first = null;
    for (String[] told :
        new String[][] {
          {"fdi", "FDI", "14", "13", "15"},
          {"universal", "Universal, 1 to 32", "5", "6", "4"},
          {"palmer", "Palmer", "4┘", "3┘", "5┘"}
        }) {
      Path out = folder.resolve(told[0]);
      run(
          "prescribe",
          cast,
          "--missing",
          "14",
          "--labels",
          labels,
          "--notation",
          told[0],
          "--out",
          out.toString());
      JsonNode json = Json.read(Files.readString(out.resolve("prescription.json")));
      first = first == null ? json : first;
      assertThat(json.at("/content/teeth")).isEqualTo(first.at("/content/teeth"));
      assertThat(json.at("/hash")).isEqualTo(first.at("/hash"));
      try (PDDocument pages = Loader.loadPDF(out.resolve("prescription.pdf").toFile())) {
        String paper = new PDFTextStripper().getText(pages).replaceAll("\\s+", " ");
        assertThat(paper).contains("Teeth (" + told[1] + ")", "teeth by " + told[1]);
        assertThat(paper).contains("replaced by the denture " + told[2] + " ");
        assertThat(paper).contains("base connector of " + told[2] + " ");
        assertThat(paper).contains(told[3] + " space distal", told[4] + " space mesial");
        assertThat(paper)
            .containsPattern("guiding plates of " + told[4] + "|guiding plates of " + told[3]);
        if (told[0].equals("palmer")) {
          // No tooth is named in FDI anywhere, words of findings and landmarks included.
          assertThat(paper)
              .doesNotContainPattern(
                  "(tooth|teeth|of|from|and|to|for:) (1[3-7]|2[3-7])\\b(?! ?(mm|%|°|\\.))");
        }
      }
    }
  }

  @Test
  void aCaseIsPrescribedTwiceAndKeepsBoth() throws IOException {
    String cast = Shared.file("arches/upper-14.ply").toString();
    String labels = Shared.file("arches/upper-14.labels.json").toString();
    String store = "--store=" + folder.resolve("store");
    Path out = folder.resolve("out");
    run("case", "new", "A-1", "--upper", cast, "--missing", "14", store);
    String said = run("prescribe", "A-1", store, "--labels", labels, "--out", out.toString());
    assertThat(said).contains("revision 1");
    JsonNode json = Json.read(Files.readString(out.resolve("prescription.json")));
    assertThat(Schemas.errors("prescription", json)).isEmpty();
    assertThat(json.at("/content/teeth/missing")).extracting(JsonNode::asInt).contains(14);
    assertThat(json.at("/content/abutments"))
        .extracting(a -> a.get("tooth").asInt())
        .contains(13, 15);
    try (PDDocument pages = Loader.loadPDF(out.resolve("prescription.pdf").toFile())) {
      assertThat(pages.getNumberOfPages()).isLessThanOrEqualTo(3);
      String paper = new PDFTextStripper().getText(pages);
      assertThat(paper).contains("A-1", "class III", json.get("hash").asText());
      assertThat(paper).contains(json.at("/content/majorConnector/kind").asText(), "guiding plate");
      assertThat(paper).doesNotContain("∞");
      // No overstressed arm is ordered in the usual alloy without a word.
      List<String> safe = new ArrayList<>();
      json.at("/content/abutments").forEach(a -> safe.add(a.at("/clasp/holdsIn").asText()));
      safe.removeIf(String::isBlank);
      assertThat(safe).isNotEmpty();
      assertThat(paper.replaceAll("\\s+", " ").split("bent; safe: ", -1)).hasSize(1 + safe.size());
    }
    // Under 15 mm a strap is made as thick as a frame (BRA 18751055).
    assertThat(json.at("/content/majorConnector/kind").asText()).isEqualTo("palatal strap");
    assertThat(json.at("/content/majorConnector/leastWidthMm").asDouble()).isLessThan(15);
    assertThat(json.at("/content/majorConnector/thicknessMm").asDouble()).isEqualTo(0.75);
    assertThat(Files.readAllLines(out.resolve("survey.csv")).size()).isGreaterThan(6 * 10);
    JsonNode plan = Json.read(Files.readString(out.resolve("plan.json")));
    assertThat(Schemas.errors("plan", plan)).isEmpty();
    assertThat(json.at("/content/bases")).hasSize(plan.at("/bases").size()).isNotEmpty();
    assertThat(json.at("/content/abutments"))
        .allSatisfy(a -> assertThat(a.at("/rests")).isNotEmpty());
    assertThat(out.resolve("plan.svg")).content().contains("<svg", "legend");
    for (String file : List.of("cast.stl", "cast.ply", "lines.dxf", "lines.obj", "path.json")) {
      assertThat(out.resolve("cast-at-path").resolve(file)).isNotEmptyFile();
    }

    Path order = Files.writeString(folder.resolve("order.json"), "{\"shade\": \"light\"}");
    said =
        run(
            "prescribe",
            "A-1",
            store,
            "--labels",
            labels,
            "--out",
            out.toString(),
            "--tilt",
            "2,0",
            "--order",
            order.toString(),
            "--notation",
            "palmer");
    assertThat(said).contains("revision 2").contains("order, shade: nothing → light");
    // What changed speaks of teeth as the rest of the page does; the file keeps FDI.
    JsonNode second = Json.read(Files.readString(out.resolve("prescription.json")));
    assertThat(Schemas.errors("prescription", second)).isEmpty();
    assertThat(second.get("changes"))
        .extracting(JsonNode::asText)
        .anyMatch(line -> line.startsWith("abutments 13, "))
        .anyMatch(line -> line.startsWith("abutments 15, "));
    try (PDDocument pages = Loader.loadPDF(out.resolve("prescription.pdf").toFile())) {
      String paper = new PDFTextStripper().getText(pages).replaceAll("\\s+", " ");
      assertThat(paper).contains("Revision 2 replaces revision 1. Changed: ");
      assertThat(paper).contains("abutments 3┘, ", "abutments 5┘, ");
      assertThat(paper).doesNotContainPattern("abutments 1[3-7]|FDI");
    }
    assertThat(said).contains("changed: abutments 3┘, ");
    assertThat(run("case", "show", "A-1", store)).contains("prescription.pdf").contains(">    3");
  }

  @Test
  void stagesAndSurveyedCrownsAreOrdersOfTheirOwn() throws IOException {
    String cast = Shared.file("arches/upper-14.ply").toString();
    String labels = Shared.file("arches/upper-14.labels.json").toString();
    Path chart =
        Files.writeString(
            folder.resolve("chart.json"),
            """
            {"format": "rodwork chart", "version": 1, "jaw": "upper", "missing": [14],
             "teeth": [{"tooth": 13, "presence": "present", "restoration": "surveyed crown"}]}
            """);
    Path out = folder.resolve("crowns");
    String[] line = {
      "prescribe", cast, "--labels", labels, "--chart", chart.toString(), "--out", out.toString()
    };
    run(with(line, "--stages", "jaw-record"));
    JsonNode content = Json.read(Files.readString(out.resolve("prescription.json"))).get("content");
    for (JsonNode stage : content.get("stages")) {
      assertThat(stage.get("asked").asBoolean())
          .isEqualTo(stage.get("stage").asText().equals("jaw record"));
      assertThat(stage.get("proposed").asBoolean()).isFalse();
    }
    // The chart decides for 13; others may be proposed, and are told apart.
    List<JsonNode> decided = new ArrayList<>();
    for (JsonNode each : content.get("surveyedCrowns")) {
      if (each.get("decided").asBoolean()) {
        decided.add(each);
      }
    }
    assertThat(decided).hasSize(1);
    JsonNode crown = decided.getFirst();
    assertThat(crown.get("tooth").asInt()).isEqualTo(13);
    assertThat(crown.get("planes")).isNotEmpty();
    assertThat(crown.get("rests")).isNotEmpty();
    // What is made in the crown is not cut into the tooth.
    for (JsonNode step : content.at("/preparation/steps")) {
      if (step.get("tooth").asInt() == 13) {
        assertThat(step.get("kind").asText()).isEqualTo("surveyed crown");
      }
    }
    assertThat(content.at("/path/tripod/landmarks")).hasSize(3);
    Shell wrong = Shell.run(with(line, "--stages", "rope"));
    assertThat(wrong.code()).isEqualTo(1);
    assertThat(wrong.err()).contains("there is no stage \"rope\"");
  }

  private static String[] with(String[] line, String... more) {
    return Stream.concat(Arrays.stream(line), Arrays.stream(more)).toArray(String[]::new);
  }

  /** Path and choices that a case keeps hold for plan and prescription, unless others are said. */
  @Test
  void whatACaseKeepsHoldsUnlessSaidOtherwise() throws IOException {
    String cast = Shared.file("arches/upper-14.ply").toString();
    String labels = Shared.file("arches/upper-14.labels.json").toString();
    String store = "--store=" + folder.resolve("store");
    Path choices =
        Files.writeString(folder.resolve("choices.json"), "{\"connector\":\"palatal-plate\"}");
    run("case", "new", "A-2", "--upper", cast, "--missing", "14", store);
    run("case", "add", "A-2", "--tilt", "2,0", "--choices", choices.toString(), store);
    JsonNode kept = Json.read(run("plan", "A-2", store, "--labels", labels, "--json", "-"));
    assertThat(kept.at("/majorConnector/kind").asText()).isEqualTo("palatal-plate");
    JsonNode said =
        Json.read(run("plan", "A-2", store, "--labels", labels, "--tilt", "0,0", "--json", "-"));
    assertThat(said.at("/majorConnector/kind").asText()).isEqualTo("palatal-plate");
    assertThat(said.get("axis")).isNotEqualTo(kept.get("axis"));
    Path out = folder.resolve("out");
    run("prescribe", "A-2", store, "--labels", labels, "--out", out.toString());
    assertThat(Json.read(Files.readString(out.resolve("plan.json"))).get("axis"))
        .isEqualTo(kept.get("axis"));
  }

  @Test
  void whatIsNeitherFileNorCaseIsRefused() {
    Shell shell =
        Shell.run("prescribe", "no-such", "--store=" + folder.resolve("none"), "--out=" + folder);
    assertThat(shell.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(shell.err()).contains("file-unreadable");
  }
}
