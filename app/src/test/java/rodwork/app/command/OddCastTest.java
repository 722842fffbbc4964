package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.report.Json;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** Odd casts through the command: a code, a clear word and a way on by hand for each. */
class OddCastTest {
  private static final long SEED = 11;

  @TempDir Path folder;

  @Test
  void aRidgeWithoutTeeth() throws IOException {
    Path ridge = saved("ridge", ridge());
    Shell alone = Shell.run("teeth", ridge.toString(), "--jaw", "upper");
    assertThat(alone.code()).as(alone.out() + alone.err()).isEqualTo(1);
    assertThat(alone.err()).contains("--up X,Y,Z");
    Shell set =
        Shell.run("teeth", ridge.toString(), "--jaw", "upper", "--up", "0,0,1", "--front", "0,1,0");
    assertThat(set.code()).as(set.out() + set.err()).isEqualTo(1);
    assertThat(set.err()).contains("no-teeth").contains("give one point");
  }

  @Test
  void twoJawsInOneFile() throws IOException {
    TriangleMesh mesh = arch();
    ArchFrame frame = frame(mesh);
    TriangleMesh over =
        Reshape.each(
            mesh,
            p -> {
              Vec3 q = frame.toArch(p.minus(frame.origin()));
              return frame.origin().plus(frame.toScan(new Vec3(-q.x(), q.y(), 4 - q.z())));
            });
    Path both = saved("both", Reshape.joined(mesh, over));
    Shell shell =
        Shell.run(
            "teeth",
            both.toString(),
            "--jaw",
            "lower",
            "--missing",
            "35",
            "--up",
            triple(frame.z()),
            "--front",
            triple(frame.y()));
    assertThat(shell.out() + shell.err())
        .contains("two-surfaces")
        .contains("Give each jaw its own file");
  }

  @Test
  void aSingleTooth() throws IOException {
    TriangleMesh mesh = arch();
    JsonNode labels = Json.read(Files.readString(Shared.file("arches/lower-35.labels.json")));
    ArchFrame frame = frame(mesh);
    IntPredicate molar = t -> labels.get(t).asInt() == 36;
    Path tooth = saved("tooth", Reshape.only(mesh, molar));
    String up = triple(frame.z());
    String front = triple(frame.y());
    Shell bare = Shell.run("teeth", tooth.toString(), "--jaw", "lower");
    assertThat(bare.code()).isEqualTo(1);
    assertThat(bare.err()).contains("unit-unknown").contains("Give the unit");
    Shell alone = Shell.run("teeth", tooth.toString(), "--jaw", "lower", "--unit", "mm");
    assertThat(alone.code()).as(alone.out() + alone.err()).isEqualTo(1);
    assertThat(alone.err()).contains("--up X,Y,Z");
    Vec3 top = frame.origin();
    double most = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 at = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      if (molar.test(t) && at.dot(frame.z()) > most) {
        most = at.dot(frame.z());
        top = at;
      }
    }
    Path point =
        Files.writeString(
            folder.resolve("point.json"),
            "[{\"tooth\":36,\"point\":" + Json.compact(Json.point(top)) + "}]");
    Shell pointed =
        Shell.run(
            "teeth",
            tooth.toString(),
            "--unit",
            "mm",
            "--up",
            up,
            "--front",
            front,
            "--points",
            point.toString(),
            "--json",
            "-");
    assertThat(pointed.code()).as(pointed.err()).isEqualTo(0);
    JsonNode found = Json.read(pointed.out());
    assertThat(found.get("teeth")).hasSize(1);
    assertThat(found.get("teeth").get(0).get("tooth").asInt()).isEqualTo(36);
  }

  @Test
  void aMirroredScan() throws IOException {
    Path mirrored = saved("mirrored", Reshape.mirrored(arch()));
    JsonNode found = teeth(mirrored, "--missing", "35");
    assertThat(codes(found)).contains("teeth-mirrored");
    assertThat(codes(teeth(saved("as-is", arch()), "--missing", "35")))
        .doesNotContain("teeth-mirrored");
  }

  @Test
  void anUpsideDownCast() throws IOException {
    TriangleMesh mesh = arch();
    // However it lies in its file, the occlusal side is found.
    Path turned = saved("turned", Reshape.turned(mesh, Vec3.X, 180));
    assertThat(numbers(teeth(turned, "--missing", "35")))
        .isEqualTo(numbers(teeth(saved("lying", mesh), "--missing", "35")));
    // Set by hand the wrong way round, it is told.
    ArchFrame frame = frame(mesh);
    Shell wrong =
        Shell.run(
            "teeth",
            saved("upside", mesh).toString(),
            "--jaw",
            "lower",
            "--up",
            triple(frame.z().times(-1)),
            "--front",
            triple(frame.y()));
    assertThat(wrong.code()).isEqualTo(1);
    assertThat(wrong.err()).contains("cast-upside-down").contains("--up X,Y,Z");
  }

  @Test
  void islandsAndHoles() throws IOException {
    TriangleMesh mesh = arch();
    Random random = new Random(SEED);
    Vec3[] holes = new Vec3[12];
    for (int i = 0; i < holes.length; i++) {
      holes[i] = mesh.pointOn(random.nextInt(mesh.triangleCount()), 1 / 3.0, 1 / 3.0);
    }
    TriangleMesh torn =
        Reshape.only(
            mesh,
            t -> {
              Vec3 at = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
              for (Vec3 hole : holes) {
                if (at.distance(hole) < 1) {
                  return false;
                }
              }
              return true;
            });
    Vec3 away = frame(mesh).z().times(9);
    TriangleMesh islands = Reshape.each(Reshape.only(mesh, t -> t % 997 < 12), p -> p.plus(away));
    JsonNode found = teeth(saved("torn", Reshape.joined(torn, islands)), "--missing", "35");
    assertThat(numbers(found))
        .as("seed %d", SEED)
        .isEqualTo(numbers(teeth(saved("whole", mesh), "--missing", "35")));
  }

  private JsonNode teeth(Path cast, String... more) throws IOException {
    Stream<String> first = Stream.of("teeth", cast.toString(), "--jaw", "lower", "--json", "-");
    Shell shell = Shell.run(Stream.concat(first, Stream.of(more)).toArray(String[]::new));
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }

  private static List<String> codes(JsonNode found) {
    return StreamSupport.stream(found.get("warnings").spliterator(), false)
        .map(one -> one.get("code").asText())
        .toList();
  }

  private static List<Integer> numbers(JsonNode found) {
    return StreamSupport.stream(found.get("teeth").spliterator(), false)
        .map(one -> one.get("tooth").asInt())
        .toList();
  }

  private Path saved(String name, TriangleMesh mesh) {
    Path file = folder.resolve(name + ".ply");
    MeshFiles.write(file, mesh, Watch.NONE);
    return file;
  }

  private static TriangleMesh arch() {
    return MeshFiles.read(Shared.file("arches/lower-35.ply"), Watch.NONE).toMesh();
  }

  private static ArchFrame frame(TriangleMesh mesh) {
    return Arch.of(MeshTopology.of(mesh), Jaw.LOWER, FrameHints.NONE).frame();
  }

  private static String triple(Vec3 v) {
    return v.x() + "," + v.y() + "," + v.z();
  }

  /** A smooth horseshoe: half a tube along a parabola, open below. */
  private static TriangleMesh ridge() {
    int along = 160;
    int across = 24;
    double[] xyz = new double[3 * along * across];
    int[] corners = new int[6 * (along - 1) * (across - 1)];
    int c = 0;
    for (int i = 0; i < along; i++) {
      double x = -28 + 56.0 * i / (along - 1);
      Vec3 way = new Vec3(1, -x / 12, 0).unit();
      Vec3 out = new Vec3(-way.y(), way.x(), 0);
      for (int j = 0; j < across; j++) {
        double turn = Math.PI * j / (across - 1);
        Vec3 p =
            new Vec3(x, 30 - x * x / 24, 0)
                .plus(out.times(-5 * Math.cos(turn)))
                .plus(Vec3.Z.times(6 * Math.sin(turn)));
        int v = i * across + j;
        xyz[3 * v] = p.x();
        xyz[3 * v + 1] = p.y();
        xyz[3 * v + 2] = p.z();
        if (i + 1 < along && j + 1 < across) {
          for (int k : new int[] {v, v + across, v + across + 1, v, v + across + 1, v + 1}) {
            corners[c++] = k;
          }
        }
      }
    }
    TriangleMesh mesh = TriangleMesh.of(xyz, corners);
    double up = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      up += mesh.doubleAreaNormal(t).z();
    }
    return up > 0 ? mesh : Reshape.flipped(mesh, _ -> true);
  }
}
