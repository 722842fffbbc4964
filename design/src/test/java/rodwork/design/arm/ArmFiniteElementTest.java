package rodwork.design.arm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.Vec3;

/**
 * The beam against bricks in CalculiX: straight and curved, tapered half-round and round, all
 * directions. Results are kept in {@code ccx.tsv}; the program itself runs where it is installed.
 */
class ArmFiniteElementTest {
  private static final Percentage THREE_PERCENT = Percentage.withPercentage(3);
  private static final Map<String, Vec3> AXES = Map.of("x", Vec3.X, "y", Vec3.Y, "z", Vec3.Z);

  private static final Section ROOT = new Section.HalfRound(2, 1);
  private static final Section TIP = new Section.HalfRound(1, 0.5);
  private static final Section WIRE = new Section.Round(1.02);

  private static final Map<String, Arm> ARMS =
      Map.of(
          "straight-half-round",
          new Arm(
              List.of(
                  new Arm.Station(new Vec3(4, 0, 0), Vec3.X),
                  new Arm.Station(new Vec3(4, 12, 0), Vec3.X)),
              ROOT,
              TIP),
          "curved-half-round",
          Arms.round(400, ArmFiniteElementTest::spiral, ROOT, TIP),
          "curved-wire",
          Arms.round(400, ArmFiniteElementTest::spiral, WIRE, WIRE));

  private static Vec3 spiral(double t) {
    double angle = 1.9 * t;
    return new Vec3(4.5 * Math.cos(angle), 4.5 * Math.sin(angle), -2.5 * t * t);
  }

  @TempDir Path folder;

  @Test
  void theBeamBendsLikeTheBricksOnRecord() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(getClass().getResourceAsStream("ccx.tsv"), "ccx.tsv")) {
      compare(results(new String(in.readAllBytes(), StandardCharsets.UTF_8)));
    }
  }

  @Test
  void theBeamBendsLikeTheBricksMadeNow() throws IOException, InterruptedException {
    Assumptions.assumeTrue(
        Boolean.getBoolean("rodwork.long"), "runs for a minute; -Drodwork.long=true");
    Assumptions.assumeTrue(
        installed(), "needs ccx (Debian package calculix-ccx) and python3-numpy");
    Path script = Path.of(System.getProperty("rodwork.root", ".."), "design/src/test/ccx/arms.py");
    Path said = folder.resolve("said.tsv");
    Process run =
        new ProcessBuilder("python3", script.toString(), folder.toString())
            .redirectOutput(said.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    assertThat(run.waitFor(10, TimeUnit.MINUTES)).isTrue();
    assertThat(run.exitValue()).isZero();
    compare(results(Files.readString(said)));
  }

  private static void compare(Map<String, Double> bricks) {
    assertThat(bricks).hasSizeGreaterThanOrEqualTo(8);
    bricks.forEach(
        (key, mm) -> {
          String[] parts = key.split(" ", -1);
          // The stretching of a straight arm is all indentation at its ends; it plays no part.
          if (!key.equals("straight-half-round y")) {
            Arm arm = Objects.requireNonNull(ARMS.get(parts[0]), key);
            Arm.Station end = arm.end();
            Vec3 centroid = end.point().plus(end.outward().times(arm.tip().centroidMm()));
            double beam =
                ArmBeam.of(arm, 0.3, centroid)
                    .compliance(220_000)
                    .along(Objects.requireNonNull(AXES.get(parts[1]), key));
            assertThat(beam).as(key).isCloseTo(mm, THREE_PERCENT);
          }
        });
  }

  private static Map<String, Double> results(String table) {
    Map<String, Double> results = new LinkedHashMap<>();
    table
        .lines()
        .map(line -> line.split("\t", -1))
        .forEach(cells -> results.put(cells[0] + " " + cells[1], Double.valueOf(cells[2])));
    return results;
  }

  private static boolean installed() throws InterruptedException {
    return works("ccx", "-v") && works("python3", "-c", "import numpy");
  }

  private static boolean works(String... command) throws InterruptedException {
    try {
      Process run =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return run.waitFor(1, TimeUnit.MINUTES) && run.exitValue() != 127;
    } catch (IOException _) {
      return false;
    }
  }
}
