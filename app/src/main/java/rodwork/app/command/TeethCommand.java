package rodwork.app.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.anatomy.occlusion.ToothRoom;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.OpposingJson;
import rodwork.app.report.OutputFile;
import rodwork.app.report.TeethJson;
import rodwork.app.report.TeethTable;

/** {@code rodwork teeth}: which triangle is which tooth, and what follows. */
@Command(
    name = "teeth",
    description = {
      "Finds the teeth of a cast: their numbers, margins, axes and sizes, the spaces between them,"
          + " and the Kennedy class with the rule that decided."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class TeethCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private CastMixin cast;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private TeethMixin teeth;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private OpposingMixin opposing;

  @Option(
      names = "--labels",
      paramLabel = "FILE.json",
      description =
          "Write the tooth of each triangle, in the order of the file: FDI number, or 0 for gum.")
  private @Nullable Path labels;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write everything as JSON; - writes it to stdout, instead of the table.")
  private @Nullable String json;

  @Override
  public void run() {
    WantedTeeth wanted = teeth.wanted();
    PrintWriter out = spec.commandLine().getOut();
    CastTeeth found;
    OpposingScan other;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      found = FindTeeth.of(OpenCast.of(cast.file(), cast.options(), watch), wanted, watch);
      other = opposing.over(found.cast(), watch);
    }
    List<ToothRoom> rooms =
        other == null
            ? List.of()
            : ToothRoom.of(other.clearance(), found.dentition(), found.cast().mesh());
    if (labels != null) {
      String text =
          Arrays.stream(found.labelsOfFile())
              .mapToObj(Integer::toString)
              .collect(Collectors.joining(",", "[", "]\n"));
      OutputFile.write(labels, to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
    }
    if (json != null) {
      ObjectNode report = TeethJson.of(found);
      if (other != null) {
        report.set("opposing", OpposingJson.of(other));
        report.set("room", OpposingJson.rooms(rooms));
      }
      JsonOutput.write(json, report, out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      TeethTable.of(found, teeth.notation()).forEach(out::println);
      if (other != null) {
        OpposingJson.table(other, rooms, teeth.notation()).forEach(out::println);
      }
    }
  }
}
