package rodwork.app.command;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One command, run in this process.
 *
 * @param code its exit code
 * @param out what it printed
 * @param err what it said on the side
 */
record Shell(int code, String out, String err) {
  static Shell run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = new CommandLineRun(new PrintWriter(out), new PrintWriter(err)).run(arguments);
    return new Shell(code, out.toString(), err.toString());
  }
}
