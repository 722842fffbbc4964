package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CommandLineRunTest {
  @Test
  void helpNamesTheCommandsAndTheExitCodes() {
    Shell shell = Shell.run("help");
    assertThat(shell.code()).isEqualTo(0);
    assertThat(shell.out()).contains("bench", "convert", "Exit codes").doesNotContain("rehearse");
    assertThat(shell.err()).isEmpty();
  }

  @Test
  void anUnknownCommandIsAUsageError() {
    Shell shell = Shell.run("servey");
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err())
        .isEqualToNormalizingNewlines(
            "rodwork: Unmatched argument at index 0: 'servey'\nSee rodwork help.\n");
    assertThat(shell.out()).isEmpty();
  }

  @Test
  void aBadOptionNamesItsCommand() {
    Shell shell = Shell.run("--port", "70000");
    assertThat(shell.code()).isEqualTo(2);
    assertThat(shell.err())
        .isEqualToNormalizingNewlines(
            "rodwork: --port 70000 is not within 0 to 65535\nSee rodwork help bench.\n");
  }
}
