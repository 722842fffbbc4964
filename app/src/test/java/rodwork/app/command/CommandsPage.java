package rodwork.app.command;

import picocli.CommandLine;
import picocli.CommandLine.Help;

/** The page docs/commands.md: the help of every command, as it stands in the program. */
final class CommandsPage {
  private static final String HEAD =
      """
      # Commands

      Generated from the program's own help; `rodwork help COMMAND` shows the same. From a checkout it is `./rodwork …`, on
      Windows `rodwork.cmd …`.

      | exit code | meaning |
      | --- | --- |
      | 0 | fine |
      | 1 | the input was refused: stderr says `rodwork: CODE: what is wrong`, and on the next line what to do; the code is stable |
      | 2 | the command line was wrong |
      | 69 | the launcher could not build or find what it needs (JDK 25, Maven, Node) |
      | 70 | a fault of Rodwork: stderr names the file with the details |
      | 130 | stopped |

      Results go to stdout, everything else to stderr; progress is shown on a terminal only. Output files are written beside their
      place first and then moved into it, so that a failure leaves an old file as it was. The JSON is described by
      schemas in [`schema`](schema), one a command.
      """;

  private CommandsPage() {}

  static String text() {
    CommandLine line = CommandLineRun.commandLine();
    StringBuilder page = new StringBuilder(HEAD);
    section(page, "rodwork", line);
    line.getSubcommands()
        .forEach(
            (name, command) -> {
              if (!command.getCommandSpec().usageMessage().hidden() && !name.equals("help")) {
                section(page, "rodwork " + name, command);
                command
                    .getSubcommands()
                    .forEach((sub, c) -> section(page, "rodwork " + name + " " + sub, c));
              }
            });
    return page.toString();
  }

  private static void section(StringBuilder page, String title, CommandLine command) {
    String usage = command.getUsageMessage(Help.Ansi.OFF).replace(System.lineSeparator(), "\n");
    page.append("\n## ").append(title).append("\n\n```\n").append(usage.strip()).append("\n```\n");
  }
}
