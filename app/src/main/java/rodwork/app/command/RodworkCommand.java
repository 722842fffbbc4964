package rodwork.app.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What {@code rodwork} is, and the commands under it. */
@Command(
    name = RodworkCommand.NAME,
    description = "A survey bench for removable partial dentures.",
    synopsisSubcommandLabel = "[COMMAND]",
    subcommands = {
      BenchCommand.class,
      SurveyCommand.class,
      TeethCommand.class,
      PathCommand.class,
      AbutmentsCommand.class,
      PlanCommand.class,
      TripodCommand.class,
      RecoverCommand.class,
      PrescribeCommand.class,
      CaseCommand.class,
      DemoCommand.class,
      RulebookCommand.class,
      IntakeCommand.class,
      ConvertCommand.class,
      HelpCommand.class,
      RehearseCommand.class
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Without a command the bench opens on a demo cast.",
      "",
      "Exit codes: 0 fine; 1 the input was refused, code, reason and advice are on stderr; 2 the"
          + " command line was wrong; 70 a fault of Rodwork; 130 stopped.",
      "",
      "Rodwork measures; the prescriber examines the patient, decides and signs."
    })
final class RodworkCommand implements Runnable {
  static final String NAME = "rodwork";

  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "a command is missing");
  }
}
