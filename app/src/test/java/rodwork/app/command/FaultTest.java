package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Command;

/** A fault of the program itself, made on purpose. */
class FaultTest {
  @Command(name = "stumble")
  static final class Stumble implements Runnable {
    @Override
    public void run() {
      throw new IllegalStateException("made on purpose");
    }
  }

  @Test
  void aFaultIsSaidCalmlyAndItsDetailsKept() throws IOException {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLineRun run = new CommandLineRun(new PrintWriter(out), new PrintWriter(err));
    int code = run.run(CommandLineRun.commandLine().addSubcommand(new Stumble()), "stumble");
    assertThat(code).isEqualTo(70);
    assertThat(err.toString())
        .startsWith("rodwork: fault: Rodwork made a mistake (IllegalStateException).")
        .doesNotContain("\tat ");
    String said = err.toString().strip();
    Path details = Path.of(said.substring(said.lastIndexOf(" in ") + 4, said.length() - 1));
    assertThat(Files.readString(details)).contains("made on purpose", "\tat ");
    Files.delete(details);
  }
}
