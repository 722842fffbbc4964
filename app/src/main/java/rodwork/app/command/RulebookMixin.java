package rodwork.app.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rodwork.casework.rulebook.Rulebook;

/** Which rulebook a command goes by. */
final class RulebookMixin {
  @Option(
      names = "--rulebook",
      paramLabel = "FILE",
      description = "The rulebook to go by, instead of the shipped one; see rodwork rulebook.")
  private @Nullable Path file;

  /**
   * The rulebook.
   *
   * @throws rodwork.geometry.Refusal if the file cannot be read or used; names the line
   */
  Rulebook book() {
    return file == null ? Rulebook.shipped() : Rulebook.read(file);
  }

  /** Whether one was given. */
  boolean given() {
    return file != null;
  }
}
