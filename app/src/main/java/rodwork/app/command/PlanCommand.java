package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.ComparePlans;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.MakePlan;
import rodwork.app.operation.OpenCast;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.ComparisonJson;
import rodwork.app.report.ComparisonTable;
import rodwork.app.report.OutputFile;
import rodwork.app.report.PlanJson;
import rodwork.app.report.PlanTable;
import rodwork.app.report.PreparedFile;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.plan.Choices;

/** {@code rodwork plan}: proposes a denture, and says every rule that it meets or breaks. */
@Command(
    name = "plan",
    description = {
      "Plans a denture at a path: rests, guiding plates, clasps with both arms, minor and major"
          + " connectors, bases, indirect retainers, as curves on the cast, with every rule that"
          + " the plan meets or breaks and what is not known; and the preparation of the mouth that"
          + " it wants, in working order, each cut measured and held against its limit.",
      "What a person chooses otherwise stands in a file of choices and keeps its warnings.",
      "The teeth are found as rodwork teeth finds them, or read from --labels.",
      "In place of a scan file the code of a case may be given: its chart, path, choices, answers"
          + " and opposing scan hold where nothing else is said."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class PlanCommand implements Runnable {
  /** More than three plans at once nobody can look over. */
  private static final int MOST_OTHERS = 2;

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
  private StoreMixin store;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private OpposingMixin opposing;

  @Option(
      names = "--choices",
      paramLabel = "FILE",
      description = "What a person chose, as docs/schema/choices.schema.json has it.")
  private @Nullable Path choices;

  @Option(
      names = "--compare",
      paramLabel = "FILE",
      arity = "1",
      description =
          "Other choices, as --choices has them: plan by them too and tell what differs, tooth by"
              + " tooth, with what a bite on each base does as ratios (docs/load-model.md). May be"
              + " given twice. Table and JSON are then those of the comparison.")
  private @Nullable List<Path> compare;

  @Option(
      names = "--drawing",
      paramLabel = "FILE.svg",
      description = "Draw the plan to scale from above and from both sides.")
  private @Nullable Path drawing;

  @Option(
      names = "--prepared",
      paramLabel = "FILE",
      description =
          "Write the cast with the cuts of the mouth preparation, to survey it again; the ending"
              + " says in which format.")
  private @Nullable Path prepared;

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
    PrintWriter out = spec.commandLine().getOut();
    List<Choices> others =
        compare == null ? List.of() : compare.stream().map(ChoicesReader::read).toList();
    if (others.size() > MOST_OTHERS) {
      throw new ParameterException(
          spec.commandLine(),
          "--compare was given " + others.size() + " times; the most is " + MOST_OTHERS);
    }
    MakePlan.Planned planned;
    List<ComparePlans.Compared> compared = List.of();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      CaseSource kept = CaseSource.of(cast.file(), cast.options().jaw(), store).orElse(null);
      planned = kept == null ? ofFile(watch) : ofCase(kept, watch);
      if (!others.isEmpty()) {
        compared = ComparePlans.of(named(planned, others, watch), null, watch);
      }
      if (prepared != null) {
        PreparedFile.write(prepared, planned, watch);
      }
    }
    if (drawing != null) {
      String svg =
          PlanDrawing.svg(
              planned.judged().teeth().arch(),
              planned.judged().teeth().dentition(),
              planned.plan(),
              planned.judged().surveyed().cast().name(),
              Sheet.WHOLE,
              teeth.notation());
      OutputFile.write(drawing, file -> file.write(svg.getBytes(StandardCharsets.UTF_8)));
    }
    if (json != null) {
      JsonOutput.write(
          json, compared.isEmpty() ? PlanJson.of(planned) : ComparisonJson.of(compared), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      (compared.isEmpty()
              ? PlanTable.of(planned, teeth.notation())
              : ComparisonTable.of(compared, teeth.notation()))
          .forEach(out::println);
    }
  }

  private MakePlan.Planned ofFile(TerminalWatch watch) {
    Rulebook book = rulebook.book();
    CastTeeth known = teeth.on(OpenCast.of(cast.file(), cast.options(), watch).by(book), watch);
    return MakePlan.of(
        known,
        new JudgeAbutments.Wanted(
                path.within(path.wanted(known.arch().frame().jaw()), known, book),
                new TreeSet<>(),
                null,
                answers.said())
            .with(opposing.over(known.cast(), watch)),
        choices == null ? Choices.NONE : ChoicesReader.read(choices),
        book,
        watch);
  }

  private MakePlan.Planned ofCase(CaseSource kept, TerminalWatch watch) {
    Rulebook book = kept.rulebook(rulebook);
    CastTeeth known = kept.teeth(teeth, kept.open(cast.options(), watch).by(book), watch);
    return MakePlan.of(
        known,
        new JudgeAbutments.Wanted(
                path.within(kept.path(path, known.arch().frame().jaw()), known, book),
                new TreeSet<>(),
                null,
                kept.answers(answers))
            .with(kept.opposing(opposing, known.cast(), watch)),
        kept.choices(choices),
        book,
        watch);
  }

  private List<ComparePlans.Named> named(
      MakePlan.Planned first, List<Choices> others, TerminalWatch watch) {
    List<ComparePlans.Named> plans = new ArrayList<>();
    plans.add(
        new ComparePlans.Named(
            choices == null ? "as proposed" : String.valueOf(choices.getFileName()), first));
    for (int i = 0; i < others.size(); i++) {
      plans.add(
          new ComparePlans.Named(
              String.valueOf(Objects.requireNonNull(compare).get(i).getFileName()),
              MakePlan.by(first, others.get(i), watch)));
    }
    return plans;
  }
}
