package rodwork.app;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import rodwork.app.command.CommandLineRun;

/** Where the program starts. */
public final class Rodwork {
  private Rodwork() {}

  /**
   * Runs the command line and ends the process with its exit code.
   *
   * @param arguments see {@code rodwork help}
   */
  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int code = new CommandLineRun(out, err).run(arguments);
    out.flush();
    err.flush();
    System.exit(code);
  }
}
