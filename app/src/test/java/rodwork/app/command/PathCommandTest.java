package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.SearchPath;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.Json;
import rodwork.app.report.LabelsFile;
import rodwork.app.report.Schemas;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Shared;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.PathMap;
import rodwork.survey.path.PathSearch;

/** Real arches with labels that their authors made. */
class PathCommandTest {
  @TempDir Path folder;

  @Test
  void aRealArchIsSearchedAndWritten() throws IOException {
    Path json = folder.resolve("path.json");
    Path csv = folder.resolve("map.csv");
    Path png = folder.resolve("map.png");
    Shell shell =
        Shell.run(
            "path",
            Shared.file("arches/upper-16-23.ply").toString(),
            "--labels",
            Shared.file("arches/upper-16-23.labels.json").toString(),
            "--missing",
            "16,23",
            "--cone",
            "6",
            "--json",
            json.toString(),
            "--map",
            csv.toString(),
            "--picture",
            png.toString());
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    assertThat(shell.out()).contains("reference", "best", "choice 1", "An aid:");
    JsonNode found = Json.read(Files.readString(json));
    assertThat(Schemas.errors("path", found)).isEmpty();
    assertThat(found.get("abutments").toString()).isEqualTo("[15,17,22,24]");
    assertThat(found.get("best").get("tilt").get("totalDeg").asDouble()).isLessThanOrEqualTo(6);
    assertThat(found.get("best").get("worth").asDouble())
        .isGreaterThanOrEqualTo(found.get("reference").get("worth").asDouble());
    List<String> lines = Files.readAllLines(csv);
    assertThat(lines).hasSize(found.get("tilts").asInt() + 1);
    int columns = lines.getFirst().split(",", -1).length;
    assertThat(lines).allMatch(line -> line.split(",", -1).length == columns);
    assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(900);
  }

  @Test
  void partsOfThePlanStandForTheSurfacesThatAnatomySuggests() throws IOException {
    Path json = folder.resolve("path.json");
    Path chart = folder.resolve("chart.json");
    Files.writeString(
        chart,
        "{\"format\":\"rodwork chart\",\"version\":1,\"jaw\":\"upper\",\"missing\":[14],"
            + "\"openingMm\":2}");
    Shell shell =
        Shell.run(
            "path",
            Shared.file("arches/upper-14.ply").toString(),
            "--labels",
            Shared.file("arches/upper-14.labels.json").toString(),
            "--chart",
            chart.toString(),
            "--cone",
            "3",
            "--planned",
            "--leave-out",
            "bar-arm",
            "--json",
            json.toString());
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode found = Json.read(Files.readString(json));
    assertThat(Schemas.errors("path", found)).isEmpty();
    assertThat(found.get("best").get("zones").findValuesAsText("kind"))
        .contains("base", "major connector")
        .doesNotContain("palate", "facial strip", "bar arm");
    double room = found.get("best").get("travel").get("roomMm").asDouble();
    assertThat(shell.out())
        .contains("the mouth opens 2 mm" + (room > 2 ? ", which is less" : "") + ".");
  }

  @Test
  void aKindOfSurfaceThatThereIsNotIsRefused() {
    Shell shell = Shell.run("path", "cast.stl", "--leave-out", "base,roof");
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err()).contains("'roof' is none of base, lingual-strip, palate");
  }

  /** On this arch a tilt of the thinned map's few was ahead of the one called best. */
  @Test
  void whatIsCalledBestIsWorthMostOfAllThatIsTold() {
    OpenedCast cast = OpenCast.of(Shared.file("arches/lower-35.ply"), CastOptions.NONE, Watch.NONE);
    int[] labels = LabelsFile.read(Shared.file("arches/lower-35.labels.json"));
    CastTeeth teeth =
        FindTeeth.labelled(cast, new WantedTeeth(Set.of(), null, List.of()), labels, Watch.NONE);
    SearchPath.Found found =
        SearchPath.prepare(teeth, Rulebook.shipped(), SearchPath.InTheWay.ANATOMY, Watch.NONE)
            .found(15, Watch.NONE);
    assertThat(found.choices()).isNotEmpty();
    assertThat(found.choices())
        .allSatisfy(c -> assertThat(c.worth()).isLessThanOrEqualTo(found.best().worth()));
    assertThat(found.reference().worth()).isLessThanOrEqualTo(found.best().worth());
  }

  @Test
  void theMapAgreesWithTheCastItself() {
    OpenedCast cast =
        OpenCast.of(Shared.file("arches/upper-15-24.ply"), CastOptions.NONE, Watch.NONE);
    int[] labels = LabelsFile.read(Shared.file("arches/upper-15-24.labels.json"));
    CastTeeth teeth =
        FindTeeth.labelled(cast, new WantedTeeth(Set.of(), null, List.of()), labels, Watch.NONE);
    PathSearch search =
        SearchPath.prepare(teeth, Rulebook.shipped(), SearchPath.InTheWay.ANATOMY, Watch.NONE)
            .search();
    PathMap map = search.map(8, Watch.NONE);
    long seed = 20;
    Random random = new Random(seed);
    for (int i = 0; i < 20; i++) {
      PathFactors rough = map.tilts().get(random.nextInt(map.tilts().size()));
      PathFactors exact = search.at(rough.tilt(), Watch.NONE);
      for (PathFactors.Factor factor : PathFactors.Factor.values()) {
        assertThat(Math.abs(rough.figure(factor) - exact.figure(factor)))
            .as("%s at %s, seed %d [mm]", factor.word(), rough.tilt(), seed)
            .isLessThan(0.05);
        assertThat(Math.abs(rough.worth(factor) - exact.worth(factor)))
            .as("worth of %s at %s, seed %d", factor.word(), rough.tilt(), seed)
            .isLessThan(0.05);
      }
    }
  }

  @Test
  void labelsOfAnotherScanAreRefused() {
    Shell shell =
        Shell.run(
            "path",
            Shared.file("arches/upper-16-23.ply").toString(),
            "--labels",
            Shared.file("arches/lower-35.labels.json").toString());
    assertThat(shell.code()).isNotEqualTo(0);
    assertThat(shell.err()).contains("labels are of another scan", "16000", "10000");
  }

  @Test
  void aConeBeyondSenseIsRefused() {
    Shell shell = Shell.run("path", "cast.stl", "--cone", "80");
    assertThat(shell.code()).isNotEqualTo(0);
    assertThat(shell.err()).contains("--cone is an angle from 0.8 to 30.0 degrees, not 80.0");
  }
}
