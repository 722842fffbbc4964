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
      "The teeth are found as rodwork teeth finds them, or read from --labels.",
      "In place of a scan file the code of a case may be given: its chart, path, answers and"
          + " opposing scan hold where nothing else is said."
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

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private StoreMixin store;

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
    Answers said = answers.said();
    PrintWriter out = spec.commandLine().getOut();
    JudgeAbutments.Judged judged;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      CaseSource kept = CaseSource.of(cast.file(), cast.options().jaw(), store).orElse(null);
      judged = kept == null ? ofFile(said, watch) : ofCase(kept, watch);
    }
    if (json != null) {
      JsonOutput.write(json, AbutmentsJson.of(judged), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      AbutmentsTable.of(judged, teeth.notation()).forEach(out::println);
    }
  }

  private JudgeAbutments.Judged ofFile(Answers said, TerminalWatch watch) {
    Rulebook book = rulebook.book();
    CastTeeth known = teeth.on(OpenCast.of(cast.file(), cast.options(), watch).by(book), watch);
    JudgeAbutments.Wanted asked =
        new JudgeAbutments.Wanted(
                path.within(path.wanted(known.arch().frame().jaw()), known, book),
                new TreeSet<>(wanted == null ? Set.of() : wanted),
                null,
                said)
            .with(opposing.over(known.cast(), watch));
    return JudgeAbutments.of(known, asked, book, watch);
  }

  private JudgeAbutments.Judged ofCase(CaseSource kept, TerminalWatch watch) {
    Rulebook book = kept.rulebook(rulebook);
    CastTeeth known = kept.teeth(teeth, kept.open(cast.options(), watch).by(book), watch);
    JudgeAbutments.Wanted asked =
        new JudgeAbutments.Wanted(
                path.within(kept.path(path, known.arch().frame().jaw()), known, book),
                new TreeSet<>(wanted == null ? Set.of() : wanted),
                null,
                kept.answers(answers))
            .with(kept.opposing(opposing, known.cast(), watch));
    return JudgeAbutments.of(known, asked, book, watch);
  }
}
