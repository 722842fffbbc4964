package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.report.IntakeJson;
import rodwork.geometry.intake.IntakeReport;
import rodwork.geometry.io.LengthUnit;

/** {@code rodwork intake}: what a scan file holds, what is wrong with it, what can be mended. */
@Command(
    name = "intake",
    description = "Reports what a scan file holds and what was mended, without surveying it.",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class IntakeCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Parameters(paramLabel = "CAST", description = ScanFile.FORMATS)
  @SuppressWarnings("NullAway.Init")
  private Path file;

  @Option(
      names = "--unit",
      paramLabel = "mm|cm|m|in",
      converter = UnitOption.class,
      description = "Unit of length of the file, instead of finding it.")
  private @Nullable LengthUnit unit;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write the report as JSON; - writes it to stdout, instead of the lines.")
  private @Nullable String json;

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    CastOptions options = new CastOptions(Jaw.UNKNOWN, FrameHints.NONE, Optional.ofNullable(unit));
    IntakeReport report;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      report = OpenCast.takeIn(file, options, watch).report();
    }
    if (json != null) {
      JsonOutput.write(json, IntakeJson.of(report), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      report.lines().forEach(out::println);
    }
  }
}
