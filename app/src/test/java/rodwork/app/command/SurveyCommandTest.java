package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.SphereCast;
import rodwork.app.report.Json;
import rodwork.survey.SurveyRules;

/** From the file to what stands on paper, on a sphere whose answers are closed forms. */
class SurveyCommandTest {
  private static final double R = SphereCast.RADIUS_MM;

  @TempDir Path folder;
  private String sphere = "";

  @BeforeEach
  void write() {
    sphere = SphereCast.in(folder).toString();
  }

  private static final String[] POSE = {"--up", "0,0,1", "--front", "0,1,0"};

  private Shell survey(String... options) {
    String[] all = new String[2 + POSE.length + options.length];
    all[0] = "survey";
    all[1] = sphere;
    System.arraycopy(POSE, 0, all, 2, POSE.length);
    System.arraycopy(options, 0, all, 2 + POSE.length, options.length);
    return Shell.run(all);
  }

  @Test
  void theTableIsShortAndSaysWhatMatters() {
    Shell shell = survey("--jaw", "lower", "--tilt", "4,-3");
    assertThat(shell.err()).isEmpty();
    assertThat(shell.code()).isEqualTo(0);
    assertThat(shell.out())
        .contains("sphere.ply, lower")
        .contains("anterior 4.0°, right −3.0°, total 5.0°")
        .contains("0.25 mm · 0.010 in: 1 marks")
        .contains("the prescriber examines the patient, decides and signs");
    assertThat(shell.out().lines().count()).isLessThan(20);
  }

  @Test
  void surveyLineAndMarksAreTheCirclesOfTheClosedForm() throws IOException {
    Shell shell = survey("--json", "-");
    assertThat(shell.code()).isEqualTo(0);
    JsonNode json = Json.read(shell.out());
    // So round a wall is parallel to the axis over some height: where a band stands for the line,
    // its edges are where the surface leans by the band's angle.
    double edge = R * Math.sin(Math.toRadians(SurveyRules.SHIPPED.bandAngle().value()));
    double around = 0;
    for (JsonNode one : json.get("surveyLines")) {
      String kind = one.get("kind").asText();
      double height = kind.equals("line") ? 0 : kind.equals("band-upper") ? edge : -edge;
      around += kind.equals("band-lower") ? 0 : one.get("lengthMm").asDouble();
      for (JsonNode p : one.get("points")) {
        assertThat(p.get(2).asDouble()).as(kind).isCloseTo(height, within(0.15));
      }
    }
    assertThat(around).isCloseTo(2 * Math.PI * R, within(0.02 * 2 * Math.PI * R));
    for (JsonNode mark : json.get("gaugeMarks")) {
      double gauge = mark.get("gaugeMm").asDouble();
      assertThat(mark.get("closed").asBoolean()).isTrue();
      assertThat(mark.get("lengthMm").asDouble()).isCloseTo(2 * Math.PI * (R - gauge), within(0.5));
      for (JsonNode p : mark.get("points")) {
        double rho = Math.hypot(p.get(0).asDouble(), p.get(1).asDouble());
        assertThat(rho).isCloseTo(R - gauge, within(2 * SphereCast.SAG_MM));
        assertThat(p.get(2).asDouble()).isNegative();
      }
    }
    assertThat(json.get("gaugeMarks")).hasSize(3);
  }

  @Test
  void theFieldFileKeepsTheOrderOfTheFile() throws IOException {
    Path field = folder.resolve("field.ply");
    assertThat(survey("--field", field.toString()).code()).isEqualTo(0);
    byte[] bytes = Files.readAllBytes(field);
    String start = new String(bytes, 0, 1000, StandardCharsets.ISO_8859_1);
    assertThat(start)
        .contains("format binary_little_endian 1.0")
        .contains("property float undercut_mm\nproperty uchar flags\n");
    int head = start.indexOf("end_header\n") + "end_header\n".length();
    boolean doubles = start.contains("property double x");
    int record = (doubles ? 24 : 12) + 5;
    ByteBuffer data = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int deep = 0;
    for (int v = 0; v < SphereCast.MESH.vertexCount(); v++) {
      int at = head + v * record;
      double x = doubles ? data.getDouble(at) : data.getFloat(at);
      assertThat(x).isCloseTo(SphereCast.MESH.x(v), within(1e-5));
      double rho = Math.hypot(SphereCast.MESH.x(v), SphereCast.MESH.y(v));
      double expected = SphereCast.MESH.z(v) < 0 ? Math.min(4, R - rho) : 0;
      float depth = data.getFloat(at + record - 5);
      assertThat((double) depth).isCloseTo(expected, within(3 * SphereCast.SAG_MM));
      if (depth >= 4) {
        assertThat(data.get(at + record - 1) & 1).isEqualTo(1);
        deep++;
      }
    }
    assertThat(deep).isGreaterThan(100);
  }

  @Test
  void thePictureIsDrawn() throws IOException {
    Path picture = folder.resolve("picture.png");
    assertThat(survey("--picture", picture.toString()).code()).isEqualTo(0);
    BufferedImage image = ImageIO.read(picture.toFile());
    assertThat(image.getWidth()).isGreaterThan(1200);
    try (var files = Files.list(folder)) {
      assertThat(files.filter(f -> f.toString().endsWith(".part"))).isEmpty();
    }
  }

  @Test
  void axisAndTiltSayTheSame() throws IOException {
    JsonNode tilted = Json.read(survey("--jaw", "upper", "--tilt", "3,2", "--json", "-").out());
    String axis =
        tilted.get("axis").get(0)
            + ","
            + tilted.get("axis").get(1)
            + ","
            + tilted.get("axis").get(2);
    JsonNode along = Json.read(survey("--jaw", "upper", "--axis", axis, "--json", "-").out());
    assertThat(along.get("tilt").get("anteriorDeg").asDouble()).isCloseTo(3, within(1e-3));
    assertThat(along.get("tilt").get("rightDeg").asDouble()).isCloseTo(2, within(1e-3));
    assertThat(along.get("undercutAreaMm2").asDouble())
        .isCloseTo(tilted.get("undercutAreaMm2").asDouble(), within(1e-3));
  }

  @Test
  void aRightTiltNeedsTheJaw() {
    Shell shell = survey("--tilt", "0,4");
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err())
        .isEqualToNormalizingNewlines(
            "rodwork: --tilt with a right tilt of 4.0° needs --jaw upper or --jaw lower, for the"
                + " shape cannot tell right from left\nSee rodwork help survey.\n");
  }

  @Test
  void badValuesAreUsageErrorsThatNameTheLimit() {
    assertThat(survey("--gauges", "0.25,9").err())
        .contains("'0.25,9': a gauge of 9.0 mm is outside the limits 0.05 to 4 mm");
    assertThat(survey("--axis", "0,0,0").err()).contains("'0,0,0' has no direction");
    assertThat(survey("--axis", "1,2").err()).contains("'1,2' is not three numbers X,Y,Z");
    assertThat(survey("--tilt", "60,0").err()).contains("'60,0' goes beyond 45°");
    assertThat(survey("--jaw", "both").err()).contains("'both' is neither upper nor lower");
    assertThat(survey("--axis", "0,0,1", "--tilt", "0,0").code()).isEqualTo(2);
  }

  /** The limit of practice: refused unless a person says that the mouth opens far enough. */
  @Test
  void aTiltOverTheLimitIsRefusedUnlessAPersonSaysSo() {
    Shell refused = survey("--jaw", "lower", "--tilt", "20,0");
    assertThat(refused.code()).isNotZero();
    assertThat(refused.err()).contains("20.0°", "limit of 15°", "--past-limit");
    assertThat(survey("--jaw", "lower", "--tilt", "15,0").code()).isZero();
    Shell allowed = survey("--jaw", "lower", "--tilt", "20,0", "--past-limit");
    assertThat(allowed.code()).isZero();
    assertThat(allowed.out()).contains("over the limit of 15°");
  }

  @Test
  void anAxisFromBelowIsRefused() {
    Shell shell = survey("--axis", "0,0,-1");
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err()).startsWith("rodwork: axis-from-below: The withdrawal axis 0.0000, ");
  }

  @Test
  void aFileThatCannotBeWrittenIsSaid() {
    Path nowhere = folder.resolve("no-such-folder").resolve("a.json");
    Shell shell = survey("--json", nowhere.toString());
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err())
        .isEqualToNormalizingNewlines(
            "rodwork: file-unwritable: "
                + nowhere
                + " cannot be written: there is no such folder.\nCheck that the folder exists, may"
                + " be written to and has room; nothing was changed.\n");
  }
}
