package rodwork.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.SphereCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.RunSurvey;
import rodwork.app.operation.WantedPath;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Shared;
import rodwork.survey.Gauges;

/** Real output against the published schemas, by a general validator (networknt). */
class SchemaTest {
  @TempDir Path folder;

  @Test
  void aSurveyFitsItsSchema() throws IOException {
    assertThat(Schemas.errors("survey", survey(SphereCast.in(folder), new Vec3(0.1, 0, 1))))
        .isEmpty();
  }

  @Test
  void anIntakeReportFitsItsSchema() throws IOException {
    JsonNode report = survey(SphereCast.in(folder), Vec3.Z).get("intake");
    assertThat(Schemas.errors("intake", report)).isEmpty();
  }

  @Test
  void theSchemaSeesWhatIsWrong() throws IOException {
    ObjectNode json = (ObjectNode) survey(SphereCast.in(folder), Vec3.Z);
    json.put("undercutAreaMm2", "much");
    ((ObjectNode) json.get("intake")).remove("unit");
    assertThat(Schemas.errors("survey", json)).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "upper-full.ply",
        "upper-15-24.ply",
        "upper-16-23.ply",
        "upper-17-27.ply",
        "upper-free-end.ply",
        "upper-14.ply",
        "upper-11.ply",
        "lower-35.ply",
        "lower-35-37-47.ply",
        "lower-dense.stl"
      })
  void everyRealArchIsSurveyedAtItsReferenceOrientation(String name) throws IOException {
    Path file = Shared.file("arches/" + name);
    Jaw jaw = name.startsWith("upper") ? Jaw.UPPER : Jaw.LOWER;
    var opened =
        OpenCast.of(
            file, new CastOptions(jaw, FrameHints.NONE, java.util.Optional.empty()), Watch.NONE);
    assertThat(opened.frameProblem()).isNull();
    JsonNode json =
        SurveyJson.of(
            RunSurvey.of(opened, WantedPath.reference(), Gauges.COMMON, Watch.NONE), Watch.NONE);
    assertThat(Schemas.errors("survey", json)).isEmpty();
    assertThat(json.get("surveyLines")).isNotEmpty();
    assertThat(json.get("gaugeMarks")).isNotEmpty();
  }

  private static JsonNode survey(Path file, Vec3 axis) throws IOException {
    CastOptions options =
        new CastOptions(Jaw.UPPER, new FrameHints(Vec3.Z, Vec3.Y), java.util.Optional.empty());
    ObjectNode json =
        SurveyJson.of(
            RunSurvey.of(
                OpenCast.of(file, options, Watch.NONE),
                new WantedPath.AlongAxis(axis),
                Gauges.COMMON,
                Watch.NONE),
            Watch.NONE);
    return Json.read(Json.compact(json));
  }
}
