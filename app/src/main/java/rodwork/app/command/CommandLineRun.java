package rodwork.app.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import rodwork.anatomy.chart.Notation;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/**
 * One run of the command line, from the arguments to an exit code.
 *
 * <p>Everything that goes wrong ends here: what was refused and why goes to stderr in two lines,
 * and a fault of the program leaves its stack trace in a file and a calm word on stderr.
 */
public final class CommandLineRun {
  private static final List<String> ASKS_FOR_HELP = List.of("-h", "--help", "-V", "--version");

  private final PrintWriter out;
  private final PrintWriter err;

  /**
   * Prepares a run.
   *
   * @param out where results go
   * @param err where everything else goes
   */
  public CommandLineRun(PrintWriter out, PrintWriter err) {
    this.out = out;
    this.err = err;
  }

  /** The commands and options, as picocli keeps them. */
  static CommandLine commandLine() {
    return new CommandLine(new RodworkCommand())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setAbbreviatedOptionsAllowed(false)
        .setUsageHelpWidth(100);
  }

  /**
   * Runs one command.
   *
   * @param arguments as the shell gave them; without a command the bench is meant
   * @return one of {@link ExitCode}
   */
  public int run(String... arguments) {
    return run(commandLine(), arguments);
  }

  int run(CommandLine line, String... arguments) {
    line.setOut(out).setErr(err);
    line.setParameterExceptionHandler((wrong, args) -> misused(wrong));
    line.setExecutionExceptionHandler(
        (failure, command, parsed) -> failed(failure, notation(command)));
    try {
      return line.execute(withCommand(line, arguments));
    } catch (OutOfMemoryError full) {
      long mib = Runtime.getRuntime().maxMemory() >> 20;
      return failed(AppRefusal.MEMORY_SHORT.with(String.join(" ", arguments), mib), Notation.FDI);
    } catch (StackOverflowError | LinkageError broken) {
      return failed(broken, Notation.FDI);
    } finally {
      out.flush();
      err.flush();
    }
  }

  /** Without a command, the bench is meant: alone, with its options, or with a scan file. */
  private static String[] withCommand(CommandLine line, String[] arguments) {
    if (arguments.length > 0) {
      String first = arguments[0];
      boolean meansBench =
          first.startsWith("-")
              ? !ASKS_FOR_HELP.contains(first)
              : !line.getSubcommands().containsKey(first) && Files.isRegularFile(Path.of(first));
      if (!meansBench) {
        return arguments;
      }
    }
    String[] all = new String[arguments.length + 1];
    all[0] = BenchCommand.NAME;
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    return all;
  }

  private int misused(ParameterException wrong) {
    String name = wrong.getCommandLine().getCommandName();
    err.println("rodwork: " + wrong.getMessage());
    err.println(
        name.equals(RodworkCommand.NAME) ? "See rodwork help." : "See rodwork help " + name + ".");
    return ExitCode.USAGE;
  }

  /** In which the command was asked to number teeth. */
  private static Notation notation(CommandLine command) {
    CommandLine.ParseResult parsed = command.getParseResult();
    return parsed.hasMatchedOption("--notation")
        ? parsed.matchedOptionValue("--notation", Notation.FDI)
        : Notation.FDI;
  }

  private int failed(Throwable failure, Notation notation) {
    out.flush();
    return switch (failure) {
      case Refusal refusal -> {
        say(refusal, notation);
        yield ExitCode.REFUSED;
      }
      case CancellationException _ -> {
        err.println("rodwork: stopped.");
        yield ExitCode.STOPPED;
      }
      default -> {
        say(
            AppRefusal.FAULT.with(failure.getClass().getSimpleName(), keepDetails(failure)),
            notation);
        yield ExitCode.FAULT;
      }
    };
  }

  private void say(Refusal refusal, Notation notation) {
    Wording said = Wording.of(refusal.pieces().toArray());
    err.println("rodwork: " + refusal.code() + ": " + said.in(notation));
    err.println(refusal.advice());
  }

  /** Writes the stack trace where a person can find it; says "no file" where even that fails. */
  private static String keepDetails(Throwable failure) {
    try {
      Path file = Files.createTempFile("rodwork-fault-", ".txt");
      try (PrintWriter trace = new PrintWriter(Files.newBufferedWriter(file))) {
        trace.println(Arrays.toString(ProcessHandle.current().info().arguments().orElse(null)));
        failure.printStackTrace(trace);
      }
      return file.toString();
    } catch (IOException | RuntimeException _) {
      return "no file (none could be written): " + failure;
    }
  }
}
