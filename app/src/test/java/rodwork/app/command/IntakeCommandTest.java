package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.app.SphereCast;
import rodwork.app.report.Json;

class IntakeCommandTest {
  @TempDir Path folder;

  @Test
  void theReportIsReadAsLinesOrAsJson() throws IOException {
    String sphere = SphereCast.in(folder).toString();
    Shell shell = Shell.run("intake", sphere);
    assertThat(shell.code()).isEqualTo(0);
    assertThat(shell.out()).contains("sphere.ply: PLY").contains("Watertight");
    Path json = folder.resolve("report.json");
    Shell both = Shell.run("intake", sphere, "--json", json.toString());
    assertThat(both.out()).isEqualTo(shell.out());
    assertThat(Json.read(Files.readString(json)).get("surface").get("watertight").asBoolean())
        .isTrue();
    Shell only = Shell.run("intake", sphere, "--json", "-");
    assertThat(Json.read(only.out())).isEqualTo(Json.read(Files.readString(json)));
  }

  @Test
  void theUnitCanBeGiven() {
    Shell shell = Shell.run("intake", SphereCast.in(folder).toString(), "--unit", "furlong");
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err()).contains("'furlong' is none of mm, cm, m, in");
  }

  @Test
  void whatIsNoMeshIsRefused() throws IOException {
    Path text = folder.resolve("letter.stl");
    Files.write(text, "Dear colleague".getBytes(StandardCharsets.UTF_8));
    Shell shell = Shell.run("intake", text.toString());
    assertThat(shell.code()).isEqualTo(1);
    assertThat(shell.err()).startsWith("rodwork: format-unknown: letter.stl: ");
    assertThat(shell.err().lines().count()).isEqualTo(2);
    assertThat(shell.out()).isEmpty();
  }
}
