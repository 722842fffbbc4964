package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.app.report.Json;
import rodwork.app.report.LabelsFile;
import rodwork.app.report.Schemas;
import rodwork.demo.DemoCast;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** A path kept on a real arch and found again on a turned copy. Truth: the turn applied. */
class TripodCommandTest {
  private static final long SEED = 29;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"upper-14", "lower-35", "upper-free-end"})
  void thePathIsFoundAgainOnATurnedCopy(String name) throws IOException {
    Path cast = Shared.file("arches/" + name + ".ply");
    Path kept = folder.resolve("tripod.json");
    Shell made = Shell.run("tripod", cast.toString(), "--tilt", "4,0", "--json", kept.toString());
    assertThat(made.code()).as(made.err()).isEqualTo(0);
    assertThat(made.out()).contains("mark 3").contains("95 times in 100");
    JsonNode tripod = Json.read(Files.readString(kept));
    assertThat(Schemas.errors("tripod", tripod)).isEmpty();
    Vec3 axis = vec(tripod.get("axis"));
    for (JsonNode mark : tripod.get("marks")) {
      assertThat(mark.get("slopeDeg").asDouble()).isBetween(20.0, 70.0);
      assertThat(vec(mark.get("point")).dot(axis) - tripod.get("heightMm").asDouble())
          .isBetween(-1e-3, 1e-3);
    }
    assertThat(tripod.get("axisErrorDeg").asDouble()).isLessThan(1.5);

    Random random = new Random(SEED);
    RigidMotion motion =
        RigidMotion.shift(new Vec3(12, -7, 30))
            .after(
                RigidMotion.turn(
                    new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()),
                    2.1));
    TriangleMesh mesh = MeshFiles.read(cast, Watch.NONE).toMesh();
    Path turned = folder.resolve("turned.ply");
    MeshFiles.write(turned, Reshape.each(mesh, motion::point), Watch.NONE);
    Vec3 truth = motion.direction(axis);

    List<Vec3> picks = new ArrayList<>();
    for (JsonNode mark : tripod.get("marks")) {
      picks.addFirst(motion.point(vec(mark.get("point"))));
    }
    Path points = folder.resolve("points.json");
    Files.writeString(points, Json.compact(Json.points(picks)));
    JsonNode byPoints =
        recovered(turned.toString(), "--tripod", kept.toString(), "--points", points.toString());
    assertThat(vec(byPoints.get("axis")).angleDegTo(truth)).isLessThan(0.01);
    assertThat(byPoints.get("offSurfaceMm").asDouble()).isLessThan(0.01);

    JsonNode byScan =
        recovered(cast.toString(), "--tripod", kept.toString(), "--rescan", turned.toString());
    assertThat(vec(byScan.get("axis")).angleDegTo(truth)).isLessThan(0.05);
  }

  @Test
  void marksKeepOffLikelyAbutmentsAndAreTiedToLandmarks() throws IOException {
    Path cast = Shared.file("arches/upper-16-23.ply");
    Path labels = Shared.file("arches/upper-16-23.labels.json");
    Path kept = folder.resolve("tripod.json");
    Shell made =
        Shell.run(
            "tripod",
            cast.toString(),
            "--tilt",
            "2,-3",
            "--jaw",
            "upper",
            "--labels",
            labels.toString(),
            "--missing",
            "16,23",
            "--json",
            kept.toString());
    assertThat(made.code()).as(made.err()).isEqualTo(0);
    JsonNode tripod = Json.read(Files.readString(kept));
    assertThat(Schemas.errors("tripod", tripod)).isEmpty();
    int[] tooth = LabelsFile.read(labels);
    for (JsonNode mark : tripod.get("marks")) {
      // Nothing of this file is mended away: its triangles are the cast's.
      assertThat(tooth[mark.get("triangle").asInt()]).isNotIn(15, 17, 22, 24);
      assertThat(mark.get("bearings").get("errorMm").asDouble()).isBetween(0.2, 1.0);
      for (JsonNode from : mark.get("bearings").get("from")) {
        assertThat(from.get("distanceMm").asDouble())
            .isCloseTo(vec(from.get("point")).distance(vec(mark.get("point"))), within(1e-3));
      }
    }
  }

  @Test
  void anotherMouthIsRefused() throws IOException {
    Shell wrong =
        Shell.run(
            "recover",
            Shared.file("arches/upper-14.ply").toString(),
            "--axis",
            "0,0,1",
            "--rescan",
            Shared.file("arches/upper-11.ply").toString());
    assertThat(wrong.code()).isEqualTo(1);
    assertThat(wrong.err()).contains("rescan-does-not-fit").contains("the limit is 70 %");
  }

  @Test
  void brokenFilesAreNamed() throws IOException {
    Path cast = Shared.file("arches/upper-14.ply");
    Path broken = Files.writeString(folder.resolve("t.json"), "{\"format\": \"rodwork tripod\"");
    Path points = Files.writeString(folder.resolve("p.json"), "[[1,2,3],[1,2],[0,0,0]]");
    assertThat(
            Shell.run(
                    "recover", cast.toString(), "--tripod", broken.toString(), "--points", "p.json")
                .err())
        .contains("json-wrong")
        .contains("t.json")
        .contains("it is no JSON");
    Shell alone = Shell.run("recover", cast.toString(), "--points", points.toString());
    assertThat(alone.code()).isEqualTo(2);
    assertThat(alone.err()).contains("--points needs --tripod");
  }

  private static JsonNode recovered(String... options) throws IOException {
    String[] all = new String[options.length + 3];
    all[0] = "recover";
    System.arraycopy(options, 0, all, 1, options.length);
    all[options.length + 1] = "--json";
    all[options.length + 2] = "-";
    Shell shell = Shell.run(all);
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    JsonNode answer = Json.read(shell.out());
    assertThat(Schemas.errors("recovery", answer)).isEmpty();
    return answer;
  }

  private static Vec3 vec(JsonNode json) {
    return new Vec3(json.get(0).asDouble(), json.get(1).asDouble(), json.get(2).asDouble());
  }

  @Test
  void aKeyAWedgeAndAPictureAreWrittenForTheDemoCast() throws IOException {
    Path picture = folder.resolve("marks.png");
    Path cast = folder.resolve("lower.stl");
    MeshFiles.write(cast, DemoCast.lower().mesh(), Watch.NONE);
    Path key = folder.resolve("key.stl");
    Path wedge = folder.resolve("wedge.3mf");
    Shell made =
        Shell.run(
            "tripod",
            cast.toString(),
            "--jaw",
            "lower",
            "--tilt",
            "5,0",
            "--post",
            "2.35",
            "--key",
            key.toString(),
            "--wedge",
            wedge.toString(),
            "--picture",
            picture.toString());
    assertThat(made.code()).as(made.err()).isEqualTo(0);
    assertThat(made.out())
        .containsPattern("[0-9.]+ mm from the [a-z]+ (cusp|angle|papilla) of [34]");
    assertThat(ImageIO.read(picture.toFile()).getWidth()).isEqualTo(1640);
    assertThat(made.out()).contains("post 2.35", "Wedge wedge.3mf: ", "between its faces");
    assertThat(MeshFiles.read(key, Watch.NONE).triangleCount()).isGreaterThan(1000);
    assertThat(MeshFiles.read(wedge, Watch.NONE).triangleCount()).isEqualTo(12);
    Shell wide = Shell.run("tripod", cast.toString(), "--post", "40");
    assertThat(wide.code()).isNotEqualTo(0);
    assertThat(wide.err()).contains("1 to 12 mm");
  }
}
