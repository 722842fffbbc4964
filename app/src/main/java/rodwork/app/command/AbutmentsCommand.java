package rodwork.app.command;

import java.io.PrintWriter;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.AbutmentsJson;
import rodwork.app.report.AbutmentsTable;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;

/** {@code rodwork abutments}: what each abutment offers, and which clasps can use it. */
@Command(
    name = "abutments",
    description = {
      "Judges the likely abutments at a path: undercut by thirds, guiding planes, the gum below;"
          + " which clasps serve, in which order, after which preparation, and for each that does not"
          + " the number that says no.",
      "What neither the scan nor the chart tells stays not known: it is said which of it could change"
          + " an answer.",
      "The teeth are found as rodwork teeth finds them, or read from --labels."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class AbutmentsCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private CastMixin cast;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private PathMixin path;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private KnownTeethMixin teeth;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private OpposingMixin opposing;

  @Option(
      names = "--teeth",
      paramLabel = "FDI,FDI",
      converter = TeethMixin.TeethOption.class,
      description = "Teeth to judge, instead of the likely abutments.")
  private @Nullable Set<ToothNumber> wanted;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private AnswersMixin answers;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write everything as JSON; - writes it to stdout, instead of the table.")
  private @Nullable String json;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Override
  public void run() {
    Rulebook book = rulebook.book();
    Answers said = answers.said();
    PrintWriter out = spec.commandLine().getOut();
    JudgeAbutments.Judged judged;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), cast.options(), watch);
      CastTeeth known = teeth.on(opened, watch);
      JudgeAbutments.Wanted asked =
          new JudgeAbutments.Wanted(
                  path.within(path.wanted(known.arch().frame().jaw()), known, book),
                  new TreeSet<>(wanted == null ? Set.of() : wanted),
                  null,
                  said)
              .with(opposing.over(known.cast(), watch));
      judged = JudgeAbutments.of(known, asked, book, watch);
    }
    if (json != null) {
      JsonOutput.write(json, AbutmentsJson.of(judged), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      AbutmentsTable.of(judged, teeth.notation()).forEach(out::println);
    }
  }
}
