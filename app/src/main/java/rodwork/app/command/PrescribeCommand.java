package rodwork.app.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CaseCast;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WritePrescription;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.JsonTriples;
import rodwork.app.report.PrescriptionFolder;
import rodwork.casework.prescription.Order;
import rodwork.casework.prescription.Paper;
import rodwork.casework.prescription.Prescription;
import rodwork.casework.prescription.Stage;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.design.plan.Choices;
import rodwork.geometry.Watch;

/** {@code rodwork prescribe}: what the laboratory receives. */
@Command(
    name = "prescribe",
    description = {
      "Writes the prescription of a cast at a path, as pages (PDF) and as JSON, with the survey table,"
          + " the picture, and the cast at its path for other programs and printers.",
      "In place of a scan file the code of a case may be given: its chart, path, choices, answers"
          + " and opposing scan hold where nothing else is said, and the prescription is kept in the case too."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class PrescribeCommand implements Runnable {
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

  @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write to.")
  @SuppressWarnings("NullAway.Init")
  private Path out;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private AnswersMixin answers;

  @Option(
      names = "--choices",
      paramLabel = "FILE",
      description = "What a person chose in the plan, as docs/schema/choices.schema.json has it.")
  private @Nullable Path choices;

  @Option(
      names = "--order",
      paramLabel = "FILE.json",
      description = "What the prescriber writes; docs/prescription.md lists the fields.")
  private @Nullable Path order;

  @Option(
      names = "--stages",
      paramLabel = "STAGE",
      split = ",",
      description =
          "Stages at which the work comes back: framework-try-in, altered-cast, jaw-record,"
              + " tooth-try-in, or none; without it what is usual is proposed.")
  private @Nullable List<String> stages;

  @Option(
      names = "--code",
      paramLabel = "CODE",
      description = "Case code on paper, where CAST is a scan file; without it the file's name.")
  private @Nullable String code;

  @Option(
      names = "--previous",
      paramLabel = "FILE.json",
      description = "The revision before, where CAST is a scan file: what changed is listed.")
  private @Nullable Path previous;

  @Option(
      names = "--paper",
      paramLabel = "a4|letter",
      defaultValue = "a4",
      description = "Size of paper; without it: ${DEFAULT-VALUE}.")
  @SuppressWarnings("NullAway.Init")
  private Paper paper;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Override
  public void run() {
    Order said = order == null ? Order.BLANK : Order.read(JsonTriples.text(order), name(order));
    Order texts = stages == null ? said : said.withStages(Stage.named(stages, "--stages"));
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      Optional<CaseSource> kept = CaseSource.of(cast.file(), cast.options().jaw(), store);
      if (kept.isPresent()) {
        ofCase(kept.get(), texts, watch);
      } else {
        ofFile(texts, watch);
      }
    }
  }

  private void ofFile(Order texts, Watch watch) {
    byte[] content = bytes(cast.file());
    Prescription before =
        previous == null ? null : Prescription.read(JsonTriples.text(previous), name(previous));
    Rulebook book = rulebook.book();
    OpenedCast opened = OpenCast.of(content, name(cast.file()), cast.options(), watch).by(book);
    CastTeeth known = teeth.on(opened, teeth.wanted(), watch);
    write(
        new Work(
            known,
            new JudgeAbutments.Wanted(
                    path.within(path.wanted(known.arch().frame().jaw()), known, book),
                    new TreeSet<>(),
                    null,
                    answers.said())
                .with(opposing.over(known.cast(), watch)),
            choices == null ? Choices.NONE : ChoicesReader.read(choices),
            book),
        new WritePrescription.Ask(
            code == null ? name(cast.file()) : code,
            LocalDate.now(ZoneId.systemDefault()),
            texts,
            name(cast.file()),
            Part.of(content).hash(),
            before),
        watch);
  }

  private void ofCase(CaseSource from, Order texts, Watch watch) {
    CaseStore kept = from.store();
    CaseFile file = from.file();
    CaseCast one = from.cast();
    Rulebook book = from.rulebook(rulebook);
    OpenedCast opened = from.open(cast.options(), watch).by(book);
    CastTeeth known = from.teeth(teeth, opened, watch);
    Prescription before =
        document(kept, file, one.jaw()).map(text -> Prescription.read(text, "case")).orElse(null);
    PrescriptionFolder.Documents made =
        write(
            new Work(
                known,
                new JudgeAbutments.Wanted(
                        path.within(from.path(path, known.arch().frame().jaw()), known, book),
                        new TreeSet<>(),
                        null,
                        from.answers(answers))
                    .with(from.opposing(opposing, known.cast(), watch)),
                from.choices(choices),
                book),
            new WritePrescription.Ask(
                file.code().text(),
                LocalDate.now(ZoneId.systemDefault()),
                texts,
                one.scan().getKey().label(),
                one.scan().getValue().hash(),
                before),
            watch);
    kept.change(
        file,
        "prescription",
        CaseEdit.NONE
            .put(document(one.jaw(), PrescriptionFolder.JSON), made.json())
            .put(document(one.jaw(), PrescriptionFolder.PDF), made.pdf()));
  }

  private static Optional<String> document(CaseStore kept, CaseFile file, Jaw jaw) {
    Part part = file.now().parts().get(document(jaw, PrescriptionFolder.JSON));
    return part == null
        ? Optional.empty()
        : Optional.of(new String(kept.read(part), StandardCharsets.UTF_8));
  }

  private static PartName document(Jaw jaw, String label) {
    return new PartName(PartKind.DOCUMENT, jaw, label);
  }

  /** What a prescription is written from. */
  private record Work(
      CastTeeth teeth, JudgeAbutments.Wanted wanted, Choices choices, Rulebook book) {}

  private PrescriptionFolder.Documents write(Work on, WritePrescription.Ask ask, Watch watch) {
    WritePrescription.Written written =
        WritePrescription.of(on.teeth, on.wanted, on.choices, on.book, ask, watch);
    PrescriptionFolder.Documents made =
        PrescriptionFolder.write(
            out, written, ask.scan(), ask.scanHash(), paper, teeth.notation(), watch);
    Prescription prescription = written.prescription();
    spec.commandLine()
        .getOut()
        .printf(
            "Prescription of %s, revision %d, content %s…: %s%n",
            ask.caseCode(),
            prescription.revision(),
            prescription.hash().substring(0, 16),
            out.resolve(PrescriptionFolder.PDF));
    prescription
        .changes()
        .forEach(
            line -> spec.commandLine().getOut().println("changed: " + line.in(teeth.notation())));
    return made;
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException failure) {
      throw AppRefusal.FILE_UNREADABLE.with(file, failure.toString());
    }
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }
}
