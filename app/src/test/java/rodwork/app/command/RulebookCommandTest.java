package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RulebookCommandTest {
  @TempDir Path folder;

  @Test
  void theCopyThatIsWrittenIsFine() {
    Path copy = folder.resolve("mine.yaml");
    assertThat(Shell.run("rulebook", "--out", copy.toString()).code()).isEqualTo(ExitCode.FINE);
    Shell checked = Shell.run("rulebook", "--check", copy.toString());
    assertThat(checked.code()).isEqualTo(ExitCode.FINE);
    assertThat(checked.out()).contains("it is the shipped one", "SHA-256");
  }

  @Test
  void aMistakeIsNamedWithItsLine() throws IOException {
    String text = Shell.run("rulebook", "--out", "-").out();
    String wrong = text.replace("tilt-warn: {value: 10,", "tilt-warn: {value: ten,");
    assertThat(wrong).isNotEqualTo(text);
    long line = wrong.substring(0, wrong.indexOf("tilt-warn:")).lines().count();
    Path copy = Files.writeString(folder.resolve("mine.yaml"), wrong);
    Shell checked = Shell.run("rulebook", "--check", copy.toString());
    assertThat(checked.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(checked.err())
        .contains("rulebook-field", "mine.yaml", "line " + line, "tilt-warn.value");
  }

  @Test
  void thePageOfACopyHasTheCopysValues() throws IOException {
    String text = Shell.run("rulebook", "--out", "-").out();
    Path copy =
        Files.writeString(
            folder.resolve("mine.yaml"),
            text.replace("load-alike: {value: 1.1,", "load-alike: {value: 1.25,"));
    for (String ending : new String[] {"html", "md", "json"}) {
      Path page = folder.resolve("page." + ending);
      Shell written = Shell.run("rulebook", "--check", copy.toString(), "--page", page.toString());
      assertThat(written.code()).as(written.err()).isEqualTo(ExitCode.FINE);
      assertThat(Files.readString(page)).contains("load-alike", "1.25").doesNotContain("NaN");
    }
    Shell refused = Shell.run("rulebook", "--page", folder.resolve("page.txt").toString());
    assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(refused.err()).contains("page-ending");
  }

  @Test
  void onlyOneWishAtATime() {
    assertThat(Shell.run("rulebook", "--out", "-", "--check", "x").code())
        .isEqualTo(ExitCode.USAGE);
    assertThat(Shell.run("rulebook").out()).contains("16 kinds of clasps");
  }
}
