package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rodwork.app.report.CaseTable;
import rodwork.casework.store.CaseArchive;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.StoreBackup;

/** {@code rodwork case}: what the case store keeps. */
@Command(
    name = "case",
    description = {
      "Keeps cases: scans as they came, chart, rulebook, documents, and every state there was.",
      "A case is known by a code; no patient's name is needed."
    },
    synopsisSubcommandLabel = "new|add|list|show|undo|redo|export|import|backup|restore",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CaseCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(),
        "say what to do: new, add, list, show, undo, redo, export, import, backup or restore");
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }

  private static final String CODE_HELP =
      "The code of the case: letters, digits, spaces and . _ -; capitals do not matter.";

  @Command(name = "new", description = "Makes a case.", mixinStandardHelpOptions = true)
  void make(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Mixin CasePartsMixin parts,
      @Mixin StoreMixin store) {
    CaseCode wanted = new CaseCode(code);
    CaseEdit edit;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      edit = parts.edit(wanted, null, watch);
    }
    String with = parts.action();
    show(store.open().create(wanted, with.isEmpty() ? "made" : "made with " + with, edit));
  }

  @Command(
      name = "add",
      description =
          "Puts scans, a chart, a path, choices or a rulebook into a case; what has the same name"
              + " gives way.",
      mixinStandardHelpOptions = true)
  void add(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Mixin CasePartsMixin parts,
      @Mixin StoreMixin store) {
    CaseStore kept = store.existing();
    CaseFile on = kept.get(new CaseCode(code));
    CaseEdit edit;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      edit = parts.edit(on.code(), on, watch);
    }
    show(kept.change(on, parts.action(), edit));
  }

  @Command(name = "list", description = "Lists the cases.", mixinStandardHelpOptions = true)
  void list(@Mixin StoreMixin store) {
    CaseTable.list(store.existing().list()).forEach(out()::println);
  }

  @Command(
      name = "show",
      description = "Shows what a case consists of, and every state it had.",
      mixinStandardHelpOptions = true)
  void show(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Mixin StoreMixin store) {
    CaseStore kept = store.existing();
    CaseFile one = kept.get(new CaseCode(code));
    show(one);
    CaseTable.history(one, kept.history(one.code())).forEach(out()::println);
  }

  @Command(
      name = "undo",
      description = "Goes back to the state before the last change.",
      mixinStandardHelpOptions = true)
  void undo(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Mixin StoreMixin store) {
    CaseStore kept = store.existing();
    show(kept.undo(kept.get(new CaseCode(code))));
  }

  @Command(
      name = "redo",
      description = "Takes the last undo back.",
      mixinStandardHelpOptions = true)
  void redo(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Mixin StoreMixin store) {
    CaseStore kept = store.existing();
    show(kept.redo(kept.get(new CaseCode(code))));
  }

  @Command(
      name = "export",
      description = "Writes a whole case with its history as one file.",
      mixinStandardHelpOptions = true)
  void export(
      @Parameters(paramLabel = "CODE", description = CODE_HELP) String code,
      @Parameters(paramLabel = "FILE.zip", description = "The file to write.") Path file,
      @Mixin StoreMixin store) {
    CaseArchive.export(store.existing(), new CaseCode(code), file);
    out().println("Written: " + file);
  }

  @Command(
      name = "import",
      description = "Takes a case in that export wrote.",
      mixinStandardHelpOptions = true)
  void load(
      @Parameters(paramLabel = "FILE.zip", description = "The file to read.") Path file,
      @Option(names = "--as", paramLabel = "CODE", description = "Another code for it.")
          @Nullable String as,
      @Mixin StoreMixin store) {
    Optional<CaseCode> code = Optional.ofNullable(as).map(CaseCode::new);
    show(CaseArchive.load(store.open(), file, code));
  }

  @Command(
      name = "backup",
      description = "Writes the whole store as one file, while others may work on it.",
      mixinStandardHelpOptions = true)
  void backup(
      @Parameters(paramLabel = "FILE.zip", description = "The file to write.") Path file,
      @Mixin StoreMixin store) {
    out().printf("Written: %s, cases: %d%n", file, StoreBackup.save(store.existing(), file));
  }

  @Command(
      name = "restore",
      description = "Makes a store from a backup, in a folder that is not there or empty.",
      mixinStandardHelpOptions = true)
  void restore(
      @Parameters(paramLabel = "FILE.zip", description = "The backup.") Path file,
      @Mixin StoreMixin store) {
    CaseStore made = StoreBackup.restore(file, store.folder());
    out().printf("Restored to %s, cases: %d%n", made.folder(), made.list().size());
  }

  private void show(CaseFile one) {
    List<String> lines = CaseTable.of(one);
    lines.forEach(out()::println);
  }
}
