package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.app.report.OutputFile;
import rodwork.app.report.RulesPageFile;
import rodwork.casework.rulebook.Conflict;
import rodwork.casework.rulebook.Rulebook;

/** {@code rodwork rulebook}: writes the shipped rulebook out, or checks a copy. */
@Command(
    name = "rulebook",
    description = {
      "Shows what the rulebook holds: every threshold, clasp requirement and preference, with"
          + " source and standing.",
      "A school or laboratory edits a copy; docs/rulebook.md tells how."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class RulebookCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @ArgGroup(exclusive = true)
  private @Nullable Wish wish;

  /** One of the two. */
  static final class Wish {
    @Option(
        names = "--out",
        paramLabel = "FILE|-",
        description = "Write the shipped rulebook; - writes it to stdout.")
    private @Nullable String out;

    @Option(
        names = "--check",
        paramLabel = "FILE",
        description = "Check a copy; what it cannot take is named with its line.")
    private @Nullable Path check;
  }

  @Option(
      names = "--page",
      paramLabel = "FILE",
      description =
          "Write every formula, threshold, rule and source as a page to read: FILE.html, FILE.md or"
              + " FILE.json; of the copy, with --check.")
  private @Nullable Path page;

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    String to = wish == null ? null : wish.out;
    if (to != null) {
      String text = Rulebook.shipped().text();
      if (to.equals(JsonOutput.STDOUT)) {
        out.print(text);
        out.flush();
      } else {
        OutputFile.write(Path.of(to), s -> s.write(text.getBytes(StandardCharsets.UTF_8)));
      }
      return;
    }
    Path check = wish == null ? null : wish.check;
    Rulebook book = check == null ? Rulebook.shipped() : Rulebook.read(check);
    if (page != null) {
      RulesPageFile.write(page, book);
      return;
    }
    out.printf("%s%n", book.title());
    out.printf("SHA-256 %s%n", book.hash());
    out.printf(
        "%d kinds of clasps, %d preferences, %d materials%n",
        book.clasps().families().size(),
        book.clasps().preferences().size(),
        book.materials().size());
    for (Conflict conflict : book.conflicts()) {
      out.printf(
          "%s: %s, side \"%s\" of %d (%s)%n",
          conflict.topic(),
          Double.isNaN(conflict.side().value())
              ? conflict.side().source()
              : conflict.side().value() + " " + conflict.unit(),
          conflict.taken(),
          conflict.sides().size(),
          conflict.side().standing().words());
    }
    if (check != null) {
      out.printf(
          book.hash().equals(Rulebook.shipped().hash())
              ? "Fine; it is the shipped one.%n"
              : "Fine; it differs from the shipped one.%n");
    }
  }
}
