package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;

/** Teeth on the command line, with one point a tooth taken from the labels of the real arches. */
class TeethCommandTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "upper-14, 14, class III",
    "lower-35-37-47, '35,37,47', class I modification 1",
    "upper-full, none, no space"
  })
  void teethAreFoundAndWritten(String name, String missing, String title) throws IOException {
    Path cast = Shared.file("arches/" + name + ".ply");
    Path labels = folder.resolve("labels.json");
    Shell shell =
        Shell.run(
            "teeth",
            cast.toString(),
            "--missing",
            missing,
            "--jaw",
            name.startsWith("upper") ? "upper" : "lower",
            "--points",
            points(name).toString(),
            "--labels",
            labels.toString(),
            "--json",
            "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode json = Json.read(shell.out());
    assertThat(Schemas.errors("teeth", json)).isEmpty();
    assertThat(json.get("kennedy").get("title").asText()).isEqualTo(title);
    JsonNode written = Json.read(Files.readString(labels));
    JsonNode truth = Json.read(Files.readString(Shared.file("arches/" + name + ".labels.json")));
    assertThat(written).hasSize(truth.size());
    int same = 0;
    for (int t = 0; t < truth.size(); t++) {
      same += truth.get(t).asInt() == written.get(t).asInt() ? 1 : 0;
    }
    // In another order about a third would agree; how good labels are is tested where they are
    // made.
    assertThat((double) same / truth.size()).as("labels in file order").isGreaterThan(0.9);
  }

  @Test
  void theTableSpeaksTheNotationWanted() throws IOException {
    Path cast = Shared.file("arches/upper-14.ply");
    Shell shell =
        Shell.run(
            "teeth",
            cast.toString(),
            "--missing",
            "14",
            "--points",
            points("upper-14").toString(),
            "--notation",
            "universal");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out())
        .contains("Space  5: bounded, ")
        .contains("Kennedy class III")
        .contains("rule 5: The most posterior space decides the class.");
  }

  /**
   * Universal numbers of the ADA written down by hand: 31 to 35 are 24 to 20; 13 is 3 in Palmer.
   */
  @Test
  void whatIsDoubtfulAndWhatIsRefusedSpeakTheNotationWanted() throws IOException {
    Shell warned =
        Shell.run(
            "teeth",
            Shared.file("arches/lower-35.ply").toString(),
            "--missing",
            "45",
            "--notation",
            "universal");
    assertThat(warned.code()).as(warned.err()).isEqualTo(0);
    assertThat(warned.out())
        .contains("Check  The numbers of 24, 23, 22, 21, 20, ")
        .doesNotContain("The numbers of 3");
    Shell refused =
        Shell.run(
            "teeth",
            Shared.file("arches/upper-14.ply").toString(),
            "--missing",
            "13",
            "--points",
            points("upper-14").toString(),
            "--notation",
            "palmer");
    assertThat(refused.code()).isNotZero();
    assertThat(refused.err()).contains("Tooth 3┘ has a point, and is called missing.");
  }

  @Test
  void theChartIsRead() throws IOException {
    Path cast = Shared.file("arches/upper-14.ply");
    Path chart =
        Files.writeString(
            folder.resolve("chart.json"),
            "{\"format\":\"rodwork chart\",\"version\":1,\"jaw\":\"upper\",\"missing\":[14],"
                + "\"teeth\":[{\"tooth\":17,\"presence\":\"to be extracted\"}]}");
    Shell shell =
        Shell.run(
            "teeth",
            cast.toString(),
            "--chart",
            chart.toString(),
            "--points",
            points("upper-14").toString());
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out())
        .contains("Kennedy class II modification 1")
        .contains("to be extracted, taken as missing: 17");
  }

  @Test
  void aSurveyIsToldByTooth() throws IOException {
    Path cast = Shared.file("arches/lower-35-37-47.ply");
    Path json = folder.resolve("survey.json");
    Shell shell =
        Shell.run(
            "survey",
            cast.toString(),
            "--missing",
            "35,37,47",
            "--points",
            points("lower-35-37-47").toString(),
            "--json",
            json.toString());
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out()).contains("Deepest undercut of each third").contains("36     facial");
    JsonNode survey = Json.read(Files.readString(json));
    assertThat(Schemas.errors("survey", survey)).isEmpty();
    assertThat(survey.get("teeth")).hasSize(11);
    assertThat(survey.get("teeth").get(0).get("zones")).hasSize(8);
  }

  @Test
  void theRoomToTheOpposingTeethIsTold() throws IOException {
    Path cast = Shared.file("arches/lower-35.ply");
    TriangleMesh mesh = MeshFiles.read(cast, Watch.NONE).toMesh();
    ArchFrame frame = Arch.of(MeshTopology.of(mesh), Jaw.LOWER, FrameHints.NONE).frame();
    Path opposing = sheet(frame, 6, folder.resolve("sheet.off"));
    Path field = folder.resolve("field.ply");
    Shell shell =
        Shell.run(
            "survey",
            cast.toString(),
            "--jaw",
            "lower",
            "--missing",
            "35",
            "--points",
            points("lower-35").toString(),
            "--opposing",
            opposing.toString(),
            "--field",
            field.toString(),
            "--json",
            "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode json = Json.read(shell.out());
    assertThat(Schemas.errors("survey", json)).isEmpty();
    assertThat(json.get("opposing").get("coveredShare").asDouble()).isGreaterThan(0.99);
    assertThat(json.get("room")).isNotEmpty();
    for (JsonNode room : json.get("room")) {
      JsonNode p = room.get("at");
      Vec3 at = new Vec3(p.get(0).asDouble(), p.get(1).asDouble(), p.get(2).asDouble());
      // A level sheet 6 mm over the origin: the way up to it is known at every place.
      double truth = 6 - at.minus(frame.origin()).dot(frame.z());
      assertThat(room.get("leastMm").asDouble()).isCloseTo(truth, within(1e-3));
    }
    assertThat(Files.readString(field, StandardCharsets.ISO_8859_1))
        .contains("property float clearance_mm");
    Shell teeth =
        Shell.run(
            "teeth",
            cast.toString(),
            "--missing",
            "35",
            "--points",
            points("lower-35").toString(),
            "--opposing",
            opposing.toString());
    assertThat(teeth.out()).contains("Opposing sheet.off, in the frame of the cast; over 100 %");
    assertThat(teeth.out()).contains("least room to it");
  }

  @Test
  void anOpposingScanThatIsNoneIsRefused() throws IOException {
    String cast = Shared.file("arches/lower-35.ply").toString();
    assertThat(Shell.run("survey", cast, "--jaw", "lower", "--opposing", cast).err())
        .contains("opposing-is-cast");
    ArchFrame far = new ArchFrame(new Vec3(900, 0, 0), Vec3.Y, Vec3.Z, Jaw.LOWER, 0, 0);
    Path elsewhere = sheet(far, 0, folder.resolve("far.off"));
    assertThat(
            Shell.run("survey", cast, "--jaw", "lower", "--opposing", elsewhere.toString()).err())
        .contains("opposing-elsewhere")
        .contains("bite scan");
    assertThat(Shell.run("survey", cast, "--bite", cast).err()).contains("--bite needs --opposing");
  }

  /** A level sheet of 120 mm, so many mm over the origin of a frame. */
  private static Path sheet(ArchFrame frame, double mm, Path file) throws IOException {
    StringBuilder off = new StringBuilder("OFF\n4 2 0\n");
    for (int k = 0; k < 4; k++) {
      Vec3 p =
          frame.origin().plus(frame.toScan(new Vec3(k % 2 == 0 ? -60 : 60, k < 2 ? -60 : 60, mm)));
      off.append(p.x() + " " + p.y() + " " + p.z() + "\n");
    }
    return Files.writeString(file, off.append("3 0 1 2\n3 1 3 2\n"));
  }

  @Test
  void whatCannotBeIsRefused() throws IOException {
    String cast = Shared.file("arches/upper-14.ply").toString();
    String points = points("upper-14").toString();
    assertThat(Shell.run("teeth", cast, "--missing", "19").err()).contains("'19' is no FDI number");
    assertThat(Shell.run("teeth", cast, "--missing", "14,34", "--points", points).err())
        .contains("two-jaws")
        .contains("34 is a lower tooth");
    assertThat(Shell.run("teeth", cast, "--missing", "13", "--points", points).err())
        .contains("point-of-missing")
        .contains("Tooth 13");
    assertThat(Shell.run("teeth", cast).err()).contains("teeth-need-jaw");
    Path broken = Files.writeString(folder.resolve("p.json"), "[{\"tooth\":17,\"point\":[1,2]}]");
    assertThat(Shell.run("teeth", cast, "--points", broken.toString()).err())
        .contains("json-wrong")
        .contains("point 1 of tooth 17 is no array of three numbers");
  }

  /** For each label the middle of its triangle that lies highest among the most central ones. */
  private Path points(String name) throws IOException {
    TriangleMesh mesh = MeshFiles.read(Shared.file("arches/" + name + ".ply"), Watch.NONE).toMesh();
    JsonNode labels = Json.read(Files.readString(Shared.file("arches/" + name + ".labels.json")));
    Vec3[] sums = new Vec3[49];
    double[] areas = new double[49];
    Arrays.fill(sums, Vec3.ZERO);
    Vec3 crowns = Vec3.ZERO;
    Vec3 gum = Vec3.ZERO;
    double crownArea = 0;
    double gumArea = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double area = mesh.area(t);
      Vec3 c = mesh.pointOn(t, 1 / 3.0, 1 / 3.0).times(area);
      int fdi = labels.get(t).asInt();
      if (fdi == 0) {
        gum = gum.plus(c);
        gumArea += area;
      } else {
        crowns = crowns.plus(c);
        crownArea += area;
        sums[fdi] = sums[fdi].plus(c);
        areas[fdi] += area;
      }
    }
    Vec3 up = crowns.times(1 / crownArea).minus(gum.times(1 / gumArea)).unit();
    List<String> points = new ArrayList<>();
    for (int fdi = 11; fdi < areas.length; fdi++) {
      if (areas[fdi] == 0) {
        continue;
      }
      Vec3 middle = sums[fdi].times(1 / areas[fdi]);
      Vec3 best = middle;
      double most = Double.NEGATIVE_INFINITY;
      for (int t = 0; t < mesh.triangleCount(); t++) {
        if (labels.get(t).asInt() == fdi) {
          Vec3 d = mesh.pointOn(t, 1 / 3.0, 1 / 3.0).minus(middle);
          double score = d.dot(up) - d.across(up).length();
          if (score > most) {
            most = score;
            best = middle.plus(d);
          }
        }
      }
      points.add("{\"tooth\":" + fdi + ",\"point\":" + Json.compact(Json.point(best)) + "}");
    }
    return Files.writeString(
        folder.resolve(name + ".points.json"), "[" + String.join(",", points) + "]");
  }
}
