package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.report.Json;
import rodwork.app.report.Schemas;
import rodwork.demo.DemoCast;
import rodwork.geometry.Watch;
import rodwork.geometry.io.Format;
import rodwork.geometry.io.MeshFiles;

/** Plans of the demo casts beside each other, held against what is taught about rests. */
class PlanCompareDemoTest {
  @TempDir Path folder;

  /**
   * The lower demo cast: 34 stands before the free end 35 to 37. Taught (Krol 1973, from memory): a
   * rest next to a free end tips its tooth to distal, one away from it does not. By the lever
   * alone: the nearer the rest, the more of the load it takes, and the less is left to the tissue.
   */
  @Test
  void aRestNextToTheFreeEndTipsItsToothToDistalAndTakesMore() throws IOException {
    JsonNode against =
        compared(
            DemoCast.lower(),
            "lower",
            "{\"rests\": {\"34\": {\"kind\": \"occlusal\", \"side\": \"distal\"}}}");
    assertThat(load(against, 35, "sinking of the base", 0)).isEqualTo("less");
    assertThat(load(against, 35, "force on the tissue", 0)).isEqualTo("less");
    assertThat(load(against, 35, "force on the rests", 34)).isEqualTo("more");
    JsonNode moment = find(against, 35, "tipping moment", 34);
    assertThat(moment.get("tipsToDistal").get("first").asDouble()).isLessThan(0.1);
    assertThat(moment.get("tipsToDistal").get("other").asDouble()).isGreaterThan(0.9);
    // The other side is bitten on: nothing there knows of that rest.
    assertThat(load(against, 46, "sinking of the base", 0)).isEqualTo("alike");
    assertThat(against.get("parts").toString()).contains("mesial occlusal rest");
  }

  /**
   * The upper demo cast with 25 and 26 between 24 and 27, and without a rest on 27. A beam bitten
   * on in its middle gives half to each of two supports; on one support and an elastic bed of its
   * length it gives a quarter to the support and the rest to the bed.
   */
  @Test
  void withoutTheLastAbutmentTheTissueCarries() throws IOException {
    JsonNode against = compared(DemoCast.upper(), "upper", "{\"notUsed\": [27]}");
    assertThat(load(against, 25, "force on the rests", 27)).isEqualTo("only in the first");
    assertThat(load(against, 25, "force on the rests", 24)).isEqualTo("less");
    assertThat(load(against, 25, "force on the tissue", 0)).isEqualTo("more");
    assertThat(load(against, 25, "sinking of the base", 0)).isEqualTo("more");
  }

  private JsonNode compared(DemoCast demo, String jaw, String choices) throws IOException {
    Path cast = folder.resolve("demo.ply");
    try (OutputStream out = Files.newOutputStream(cast)) {
      MeshFiles.write(out, Format.PLY, demo.mesh(), Watch.NONE);
    }
    Path other = Files.writeString(folder.resolve("other.json"), choices);
    List<String> line =
        new ArrayList<>(List.of("plan", cast.toString(), "--jaw", jaw, "--missing"));
    line.add(demo.missing().stream().map(String::valueOf).collect(Collectors.joining(",")));
    line.addAll(List.of("--compare", other.toString(), "--json", "-"));
    Shell shell = Shell.run(line.toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode json = Json.read(shell.out());
    assertThat(Schemas.errors("comparison", json)).isEmpty();
    return json.get("others").get(0).get("against");
  }

  private static String load(JsonNode against, int bitten, String measure, int tooth) {
    return find(against, bitten, measure, tooth).get("answer").asText();
  }

  private static JsonNode find(JsonNode against, int bitten, String measure, int tooth) {
    for (JsonNode load : against.get("loads")) {
      if (load.get("bitten").toString().contains(String.valueOf(bitten))
          && load.get("measure").asText().equals(measure)
          && load.get("tooth").asInt() == tooth) {
        return load;
      }
    }
    throw new AssertionError(measure + " of " + tooth + " bitten on at " + bitten);
  }
}
