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
  void onlyOneWishAtATime() {
    assertThat(Shell.run("rulebook", "--out", "-", "--check", "x").code())
        .isEqualTo(ExitCode.USAGE);
    assertThat(Shell.run("rulebook").out()).contains("16 kinds of clasps");
  }
}
